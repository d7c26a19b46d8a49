import { neutralise } from './formulaSafety.ts';
import papa from './papa.ts';

export type Cell = string | number | null;

/**
 * A table as CSV (RFC 4180: commas, CRLF, quotes doubled). Figures have a point and no grouping, whatever the place;
 * nothing is an empty cell. Text that a spreadsheet would take for a formula is neutralised.
 */
export function writeCsv(columns: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const data = rows.map((row) => row.map((cell) => (typeof cell === 'string' ? neutralise(cell) : numberText(cell))));
  return `${papa.unparse([columns, ...data], { newline: '\r\n' })}\r\n`;
}

function numberText(value: number | null): string {
  if (value === null || !Number.isFinite(value)) return '';
  // Never in powers of ten, which some readers take for text.
  return String(value).includes('e') ? value.toFixed(6) : String(value);
}
