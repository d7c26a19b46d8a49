import type { Figures } from '../../types.ts';

/** What stands on many sheets. */
export const common = {
  /** Clearances from IEC 60335-2-76, Annex BB; the rest is common practice, no source. */
  cautions: {
    work: 'Before any work: energiser off, and the fence proven dead with a voltmeter.',
    /** As they are written: never less than the metres of the standard. */
    powerLines: ({ low, medium, high }: { low: string; medium: string; high: string }) =>
      `Power lines: fence wires and leads keep ${low} off up to 1 kV, ${medium} up to 33 kV, ${high} above, and never cross over. For people and machines ask the line’s owner.`,
    digging:
      'Before digging: locate all other buried services. Only what is in the file is shown; positions have errors.',
    stock: 'Stock and public roads: close up and warn before the fence goes dead.',
    estimates: 'Cable and pipe lengths and voltages are estimates. Local codes and licensed practice come first.',
    /** All of them in one line, for the foot of a page. */
    inOneLine:
      'Energiser off and fence proven dead before work. Locate other buried services before digging. Local codes come first. Only what is in the file is known.',
  },
  page: ({ number, of }: { number: number; of: number }, f: Figures) => `Page ${f.number(number)} of ${f.number(of)}`,
  /** The second and further pages of one title. */
  continued: ({ title, number }: { title: string; number: number }, f: Figures) => `${title} (${f.number(number)})`,
  headed: ({ property, title }: { property: string; title: string }) => `${property} · ${title}`,
  position: 'Position',
  /** The datum, under the head of a column of places. */
  wgs84: 'WGS 84',
  invented: 'INVENTED EXAMPLE: no such property',
};
