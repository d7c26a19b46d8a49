import { formatAtLeast, type Units } from '../words/numbers/write.ts';
/**
 * Said on every map and on the first page of every register. Clearances from IEC 60335-2-76, Annex BB; the rest is
 * common practice, no source.
 */
export function cautions(units: Units): readonly string[] {
  const keep = (lengthM: number) => formatAtLeast(lengthM, units);
  return [
    'Before any work: energiser off, and the fence proven dead with a voltmeter.',
    `Power lines: fence wires and leads keep ${keep(3)} off up to 1 kV, ${keep(4)} up to 33 kV, ${keep(8)} above, and never cross over. For people and machines ask the line’s owner.`,
    'Before digging: locate all other buried services. Only what is in the file is shown; positions have errors.',
    'Stock and public roads: close up and warn before the fence goes dead.',
    'Cable and pipe lengths and voltages are estimates. Local codes and licensed practice come first.',
  ];
}

/** The same in one line, for the foot of a page. */
export const cautionLine =
  'Energiser off and fence proven dead before work. Locate other buried services before digging. Local codes come first. Only what is in the file is known.';
