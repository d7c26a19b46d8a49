import type { FontRole, Item, PaperPoint } from '../../drawing/displayList.ts';
import { line, stroke, tagged, text } from '../../drawing/paint.ts';
import { leading, letters, mmPerPt, pen } from '../../drawing/style.ts';
import { type MeasureText, widestWordMm, wrapText } from '../../drawing/words.ts';
import { largestOf } from '../../model/extremes.ts';
import { type Block, baselineIn } from './block.ts';

export interface Column {
  readonly title: string;
  /** Unit of its figures, shown under the title. */
  readonly unit?: string;
  readonly align?: 'left' | 'right';
  /** Set bold: what the row is about. */
  readonly strong?: boolean;
}

/** Words, or a drawing made for the place that the cell gets (its left end and the middle of its first line). */
export type Cell = string | { readonly widthMm: number; readonly draw: (at: PaperPoint) => readonly Item[] };

export interface Table {
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  /** Sums, set apart below. */
  readonly totals?: readonly string[];
}

const gutterMm = 3.4;
const padMm = 0.9;
const sizePt = letters.table;
const step = sizePt * mmPerPt * leading;

/**
 * A table as blocks, a row each; the head comes again on every page. Columns are as wide as their contents ask; where
 * that is too much, the wordy ones give way and wrap. Nothing is cut off.
 */
export function tableBlocks(table: Table, widthMm: number, measure: MeasureText): Block[] {
  const widths = columnWidths(table, widthMm, measure);
  const head = headBlock(table.columns, widths, widthMm, measure);
  const rows = table.rows.map((row) => rowBlock(row, table.columns, widths, widthMm, 'regular', measure));
  const totals = table.totals ? [rowBlock(table.totals, table.columns, widths, widthMm, 'bold', measure)] : [];
  const [firstRow, ...others] = [...rows, ...totals];
  if (!firstRow) return [head];
  return [{ ...head, keepWithNext: true }, { ...firstRow, head }, ...others.map((row) => ({ ...row, head }))];
}

/** Widths of the columns with their gutters, together exactly `widthMm`. */
export function columnWidths({ columns, rows, totals }: Table, widthMm: number, measure: MeasureText): number[] {
  const least: number[] = [];
  const most: number[] = [];
  columns.forEach((column, c) => {
    const cells = [...rows, ...(totals ? [totals] : [])].map((row) => row[c] ?? '');
    const headWords = [column.title, column.unit ?? ''];
    const wordWidths = [
      ...headWords.map((part) => widestWordMm(part, 'bold', sizePt, measure)),
      ...cells.map((cell) =>
        typeof cell === 'string' ? widestWordMm(cell, cellFont(column), sizePt, measure) : cell.widthMm,
      ),
    ];
    const fullWidths = [
      ...headWords.map((part) => widestWordMm(part, 'bold', sizePt, measure)),
      ...cells.map((cell) => (typeof cell === 'string' ? widestLineMm(cell, column, measure) : cell.widthMm)),
    ];
    // Small allowance: the bold of a sum is wider than the figures above it.
    least.push(largestOf(wordWidths) * 1.08 + gutterMm);
    most.push(Math.max(largestOf(wordWidths), largestOf(fullWidths)) * 1.08 + gutterMm);
  });
  return shareOut(least, most, widthMm);
}

function widestLineMm(cell: string, column: Column, measure: MeasureText): number {
  return Math.max(0, largestOf(cell.split('\n').map((part) => measure(part, cellFont(column), sizePt))));
}

function shareOut(least: readonly number[], most: readonly number[], widthMm: number): number[] {
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const [leastSum, mostSum] = [sum(least), sum(most)];
  if (mostSum <= widthMm) {
    // Room to spare goes to the wordy columns, so that figures stay near each other.
    const slack = widthMm - mostSum;
    return most.map((value) => value + (slack * value) / mostSum);
  }
  if (leastSum <= widthMm) {
    const share = (widthMm - leastSum) / (mostSum - leastSum || 1);
    return least.map((value, c) => value + share * (most[c]! - value));
  }
  // Even the longest words are too wide together: the widest columns give way, and their words are broken.
  let cap = largestOf(least);
  for (let i = 0; i < 60 && sum(least.map((value) => Math.min(value, cap))) > widthMm; i++) cap *= 0.95;
  const capped = least.map((value) => Math.min(value, cap));
  return capped.map((value) => (value * widthMm) / sum(capped));
}

function cellFont({ align, strong }: Column): FontRole {
  if (strong) return 'bold';
  return align === 'right' ? 'figures' : 'regular';
}

function headBlock(
  columns: readonly Column[],
  widths: readonly number[],
  widthMm: number,
  measure: MeasureText,
): Block {
  const titles = columns.map((column, c) => wrapText(column.title, widths[c]! - gutterMm, 'bold', sizePt, measure));
  const unitLines = columns.some(({ unit }) => unit !== undefined) ? 1 : 0;
  const titleLines = Math.max(1, largestOf(titles.map((lines) => lines.length)));
  const heightMm = (titleLines + unitLines) * step + 2 * padMm;
  return {
    heightMm,
    paint: ([x, y]) => {
      const items: Item[] = [rule(x, y + heightMm, widthMm, pen.frame)];
      let left = x;
      columns.forEach((column, c) => {
        const lines = [...Array<string>(titleLines - titles[c]!.length).fill(''), ...titles[c]!];
        const cell = lines.map((words, i) => cellText(words, column, left, y + padMm + i * step, widths[c]!, 'bold'));
        if (column.unit)
          cell.push(cellText(column.unit, column, left, y + padMm + titleLines * step, widths[c]!, 'regular'));
        items.push(
          tagged(
            'TH',
            cell.filter(({ text: words }) => words !== ''),
          ),
        );
        left += widths[c]!;
      });
      return [tagged('TR', items)];
    },
  };
}

function rowBlock(
  row: readonly Cell[],
  columns: readonly Column[],
  widths: readonly number[],
  widthMm: number,
  weight: 'regular' | 'bold',
  measure: MeasureText,
): Block {
  const wrapped = columns.map((column, c) => {
    const cell = row[c] ?? '';
    const font = weight === 'bold' ? 'bold' : cellFont(column);
    return typeof cell === 'string' ? wrapText(cell, widths[c]! - gutterMm + 0.01, font, sizePt, measure) : cell;
  });
  const lineCount = Math.max(1, largestOf(wrapped.map((cell) => (Array.isArray(cell) ? cell.length : 1))));
  const heightMm = lineCount * step + 2 * padMm;
  return {
    heightMm,
    paint: ([x, y]) => {
      const items: Item[] = [rule(x, y + heightMm, widthMm, pen.hairline)];
      if (weight === 'bold') items.push(rule(x, y, widthMm, pen.sign));
      let left = x;
      wrapped.forEach((cell, c) => {
        const column = columns[c]!;
        if (!Array.isArray(cell))
          items.push(tagged('TD', (cell as Exclude<Cell, string>).draw([left, y + padMm + step / 2])));
        else if (cell.some((words) => words !== '')) {
          const font = weight === 'bold' ? 'bold' : cellFont(column);
          items.push(
            tagged(
              'TD',
              cell.map((words, i) => cellText(words, column, left, y + padMm + i * step, widths[c]!, font)),
            ),
          );
        }
        left += widths[c]!;
      });
      return [tagged('TR', items)];
    },
  };
}

function cellText(words: string, { align }: Column, left: number, top: number, width: number, font: FontRole) {
  const x = align === 'right' ? left + width - gutterMm : left;
  return text(words, [x, baselineIn(top, step, sizePt)], { sizePt, font, align: align ?? 'left' });
}

function rule(x: number, y: number, widthMm: number, weight: number): Item {
  return line(
    [
      [x, y],
      [x + widthMm, y],
    ],
    stroke(weight),
  );
}
