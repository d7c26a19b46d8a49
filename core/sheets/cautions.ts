import { formatAtLeast } from '../words/numbers/write.ts';
import type { Figures } from '../words/types.ts';

/** Said on every map and on the first page of every register. */
export function cautions({ units, words }: Figures): readonly string[] {
  const keep = (lengthM: number) => formatAtLeast(lengthM, units);
  const { work, powerLines, digging, stock, estimates } = words.sheets.common.cautions;
  return [work, powerLines({ low: keep(3), medium: keep(4), high: keep(8) }), digging, stock, estimates];
}
