import { readFileNumber } from '../../words/numbers/read.ts';
import { restore } from './formulaSafety.ts';
import { type Outcome, refuse } from './outcome.ts';
import papa from './papa.ts';

const most = { letters: 20_000_000, rows: 100_000 };

export interface CsvTable {
  readonly columns: readonly string[];
  readonly rows: readonly CsvRow[];
  /** The comma is the decimal sign, as it is where a semicolon or tab parts the cells. */
  readonly decimalComma: boolean;
}

export interface CsvRow {
  /** Counted from 1, the heading included, as a spreadsheet counts. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** Reads a table whose first row names the columns; commas, semicolons or tabs between the cells. */
export function readCsv(text: string): Outcome<CsvTable> {
  if (text.length > most.letters) {
    return refuse(`The file has over ${most.letters / 1e6} million letters.`, 'Choose a smaller table.');
  }
  if (text.includes('\0')) return refuse('This is not a text file.', 'Choose a CSV file.');
  const parsed = papa.parse(text.replace(/^\uFEFF/, ''), { delimitersToGuess: [',', ';', '\t'] });
  const filled = parsed.data
    .map((cells, i) => ({ line: i + 1, cells: cells.map(restore) }))
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  const [head, ...rows] = filled;
  if (!head) return refuse('The file is empty.', 'Choose a CSV file with a heading row.');
  if (rows.length > most.rows) return refuse(`The file has over ${most.rows} rows.`, 'Choose a smaller table.');
  const open = parsed.errors.find(({ message }) => /quote/i.test(message));
  if (open) {
    return refuse(`A quoted cell in row ${(open.row ?? 0) + 1} is not closed.`, 'Fix the quotes and try again.');
  }
  return {
    ok: true,
    value: {
      columns: head.cells.map((cell) => cell.trim().toLowerCase()),
      rows,
      decimalComma: parsed.meta.delimiter !== ',',
    },
  };
}

/** The figure that a cell means; null for an empty one, NaN for what is no figure. "1,234.50", "12,5", "15 %". */
export function readFigure(cell: string, decimalComma: boolean): number | null {
  const text = cell.trim().replace(/\s*%$/, '');
  if (text === '') return null;
  return readFileNumber(text, decimalComma ? 'decimal' : 'thousands') ?? Number.NaN;
}
