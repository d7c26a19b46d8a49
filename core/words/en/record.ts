import type { Figures, Phrase, ThingRef } from '../types.ts';

/** One value that is not what it was. */
type Changed = { readonly field: Phrase; readonly before: Phrase; readonly after: Phrase };
type Named = { readonly name: string };

/** Crossings in the ground, by what is recorded of them. */
type HowFar = {
  readonly buried: number;
  readonly begun: number;
  readonly untied: number;
  readonly ambiguous: number;
  readonly contradictory: number;
  readonly planned: number;
  /** Things of any kind. */
  readonly builtOtherwise: number;
};

const changed = ({ field, before, after }: Changed, f: Figures) =>
  `${f.say(field)} ${f.say(before)}, now ${f.say(after)}`;

/** What is said of what was built. */
export const record = {
  /** What people call a thing. */
  names: {
    named: ({ name }: Named) => name,
    crossing: ({ gateway }: { gateway: string | null }) => `crossing at ${gateway ?? 'a gateway that is gone'}`,
    crossingGone: 'a crossing that is gone',
    earthStakes: ({ energiser }: { energiser: string | null }) =>
      `earth stakes of ${energiser ?? 'an energiser that is gone'}`,
    recordOf: ({ crossing }: { crossing: Phrase }, f: Figures) => `record of the ${f.say(crossing)}`,
    pointOf: ({ point, crossing }: { point: string; crossing: Phrase }, f: Figures) =>
      `${point || 'buried point'} of the ${f.say(crossing)}`,
    photo: ({ fileName }: { fileName: string }) => `photo ${fileName}`,
    captioned: ({ caption }: { caption: string }) => `photo “${caption}”`,
    /** A reading or a test. */
    ofDay: ({ kind, day }: { kind: ThingRef['kind']; day: string }, f: Figures) => `${f.kind(kind)} of ${day}`,
  },
  /** Values as the list of changes says them. */
  values: {
    nothing: 'nothing',
    yes: 'yes',
    no: 'no',
    text: ({ text }: { text: string }) => text,
    figure: ({ value }: { value: number }) => String(value),
    millimetres: ({ valueMm }: { valueMm: number }) => `${valueMm} mm`,
    length: ({ lengthM }: { lengthM: number }, f: Figures) => f.tape(lengthM),
    volts: ({ volts }: { volts: number }, f: Figures) => f.volts(volts),
    entries: ({ count }: { count: number }, f: Figures) =>
      `${f.number(count, 0)} ${f.plural(count, { one: 'entry', other: 'entries' })}`,
    figures: 'other figures',
  },
  changed,
  /** All that is changed of one thing. */
  allChanged: ({ changes }: { changes: readonly Changed[] }, f: Figures) =>
    changes.map((change) => changed(change, f)).join('; '),
  /** Of a thing since a handover. */
  since: {
    new: ({ name }: { name: Phrase }, f: Figures) => `${f.say(name)}: new`,
    gone: ({ name }: { name: Phrase }, f: Figures) => `${f.say(name)}: gone`,
    changed: (
      { name, built, movedM, changes }: { name: Phrase; built: boolean; movedM: number; changes: readonly Changed[] },
      f: Figures,
    ) => {
      const said = [
        built ? 'built' : '',
        movedM > 0 ? `moved ${f.length(movedM)}` : '',
        ...changes.map((change) => changed(change, f)),
      ];
      return `${f.say(name)}: ${said.filter((part) => part !== '').join('; ')}`;
    },
  },
  /** What the record of a crossing lacks. */
  lacks: {
    side: ({ points }: { points: readonly Phrase[] }, f: Figures) => `which side (${points.map(f.say).join(', ')})`,
    tiesThatMeet: ({ points }: { points: readonly Phrase[] }, f: Figures) =>
      `ties that meet (${points.map(f.say).join(', ')})`,
    ties: ({ point }: { point: Phrase }, f: Figures) => `ties of the ${f.say(point)}`,
    bend: 'the bend',
    depths: 'depths',
    joints: 'joints underground',
    seals: 'seals',
    photo: 'a photo',
    recordedBy: 'who recorded it',
  },
  noCrossing: 'No buried crossing is drawn, so there is none to record.',
  /** How far the record is. */
  howFar: ({ buried, begun, untied, ambiguous, contradictory, planned, builtOtherwise }: HowFar, f: Figures) => {
    const crossings = f.plural(buried, { one: 'crossing', other: 'crossings' });
    const parts = [
      buried > 0 ? `${begun} of ${buried} ${crossings} in the ground recorded` : 'No crossing in the ground yet',
      buried === 0 ? '' : untied > 0 ? `${untied} can't be found by tape yet` : 'all can be found by tape',
      ambiguous > 0 ? `${ambiguous} with the side not said` : '',
      contradictory > 0 ? `${contradictory} with tapes that do not meet` : '',
      planned > 0 ? `${planned} planned` : '',
      builtOtherwise > 0
        ? `${f.number(builtOtherwise, 0)} ${f.plural(builtOtherwise, { one: 'thing', other: 'things' })} built otherwise than planned`
        : '',
    ];
    return `${parts.filter((part) => part !== '').join('; ')}.`;
  },
};
