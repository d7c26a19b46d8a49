import type { Figures, Phrase, ThingRef } from '../types.ts';

/** One value that is not what it was. */
type Changed = { readonly field: Phrase; readonly before: Phrase; readonly after: Phrase };
type Named = { readonly name: string };

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
};
