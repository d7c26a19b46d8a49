import { capital } from '../../text.ts';
import type { Figures, Phrase } from '../../types.ts';

/** The name of a switch; null of one that is gone. */
type Switch = string | null;

function switchWords(name: Switch): string {
  return name ?? 'a switch that is gone';
}

function switchesWords(names: readonly Switch[], f: Figures): string {
  return f.list(names.map(switchWords));
}

/** What has to be opened and closed, then "read". */
function firstWords(toOpen: readonly Switch[], toClose: readonly Switch[], f: Figures): string {
  const handling = [
    ...(toOpen.length > 0 ? [`open ${switchesWords(toOpen, f)}`] : []),
    ...(toClose.length > 0 ? [`close ${switchesWords(toClose, f)}`] : []),
  ];
  return handling.length > 0 ? `${capital(handling.join(', '))}. Then read` : 'Read';
}

const few = 6;

const results = { good: 'good', low: 'low' };

/** What a search for a fault says to the person who walks it. */
export const faultSearch = {
  switches: ({ names }: { names: readonly Switch[] }, f: Figures) => switchesWords(names, f),
  step: {
    atEnergiser: ({ toOpen, toClose }: { toOpen: readonly Switch[]; toClose: readonly Switch[] }, f: Figures) =>
      `${firstWords(toOpen, toClose, f)} at the energiser, on the wire that leads out.`,
    atSwitch: (
      {
        toOpen,
        toClose,
        name,
        isOpen,
        place,
      }: {
        toOpen: readonly Switch[];
        toClose: readonly Switch[];
        name: Switch;
        isOpen: boolean;
        place: Phrase | null;
      },
      f: Figures,
    ) =>
      `${firstWords(toOpen, toClose, f)} at ${switchWords(name)}${isOpen ? ', on the energiser’s side' : ''}${place ? `: ${f.say(place)}` : ''}.`,
    staysOpen: ({ names }: { names: readonly Switch[] }, f: Figures) =>
      `${switchesWords(names, f)} ${f.plural(names.length, { one: 'stays', other: 'stay' })} open.`,
  },
  left: ({ most, expected }: { most: number; expected: number }, f: Figures) => {
    if (most === 0) return 'No test is left.';
    if (most === 1) return 'One test is left.';
    return `At most ${f.number(most)} tests are left, ${f.number(expected, 1)} as a rule.`;
  },
  /** "S4: 2.1 kV, low (usual 8.1 kV, estimated)" */
  reading: (
    {
      at,
      check,
      voltageV,
      result,
      doubtful,
      usualV,
      usualBy,
    }: {
      /** The name of the switch; empty where none was kept; null: at the energiser. */
      at: string | null;
      check: 'start' | 'test' | 'with' | 'without';
      voltageV: number | null;
      result: 'good' | 'low';
      doubtful: boolean;
      usualV: number | null;
      usualBy: 'estimate' | 'reading' | null;
    },
    f: Figures,
  ) => {
    const place = at === null ? 'At the energiser' : at || 'At a switch';
    const again =
      check === 'with' ? ' (to make sure, section fed)' : check === 'without' ? ' (to make sure, section cut off)' : '';
    const by = usualBy === 'estimate' ? ', estimated' : usualBy === 'reading' ? ', as read before' : '';
    const usual = usualV === null ? '' : ` (usual ${f.volts(usualV)}${by})`;
    return `${place}${again}: ${voltageV === null ? '' : `${f.volts(voltageV)}, `}${results[result]}${doubtful ? ', doubtful' : ''}${usual}`;
  },
  /** What a piece of the fence is. */
  piece: {
    section: ({ letter }: { letter: string }) => `section ${letter}`,
    source: 'the energiser, its earth or its lead-out',
    cable: 'the cable between two switches',
  },
  /** What a section is made of. */
  madeOf: ({ lines, gateways }: { lines: readonly string[]; gateways: readonly string[] }, f: Figures) => {
    if (lines.length === 0) return f.list(gateways, few);
    return gateways.length === 0 ? f.list(lines, few) : `${f.list(lines, few)} with ${f.list(gateways, few)}`;
  },
  /** Where to look first, and why there. */
  suspect: {
    crossing: ({ gateway }: { gateway: string }) => `Crossing at ${gateway}`,
    join: ({ lines }: { lines: readonly string[] }, f: Figures) => `Join of ${f.list(lines)}`,
    named: ({ name }: { name: string }) => name,
    several: ({ all }: { all: readonly Phrase[] }, f: Figures) => all.map(f.say).join('; '),
    joints: ({ count }: { count: number }) => (count === 1 ? 'a joint underground' : `${count} joints underground`),
    notSealed: 'riser ends not sealed',
    noted: ({ note }: { note: string }) => `noted: “${note}”`,
    buried: 'buried cable: test it at both tails',
    overhead: 'overhead cable at the gate',
    clamps: 'joint clamps: look for loose or rusty ones',
    switch: 'its clamps and contacts',
    growth: 'heavy growth on the wires',
    walk: ({ lengthM }: { lengthM: number }, f: Figures) =>
      `walk it: ${f.length(lengthM)}; growth, fallen branches, broken insulators`,
  },
};
