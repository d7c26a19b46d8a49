import { message } from '../../words/message.ts';
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
    const tooMany = message('exchange.file.tooManyLetters', { millions: most.letters / 1e6 });
    return refuse(tooMany, message('exchange.remedy.smallerTable'));
  }
  if (text.includes('\0')) return refuse(message('exchange.file.noText'), message('exchange.remedy.selectCsv'));
  const parsed = papa.parse(text.replace(/^\uFEFF/, ''), { delimitersToGuess: [',', ';', '\t'] });
  const filled = parsed.data
    .map((cells, i) => ({ line: i + 1, cells: cells.map(restore) }))
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  const [head, ...rows] = filled;
  if (!head) return refuse(message('exchange.file.empty', { name: null }), message('exchange.remedy.withHeading'));
  if (rows.length > most.rows) {
    return refuse(message('exchange.file.tooManyRows', { rows: most.rows }), message('exchange.remedy.smallerTable'));
  }
  const open = parsed.errors.find((error) => /quote/i.test(error.message));
  if (open) {
    const row = (open.row ?? 0) + 1;
    return refuse(message('exchange.file.openQuote', { row }), message('exchange.remedy.fixQuotes'));
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
