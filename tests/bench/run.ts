import { globSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { BenchRow } from './row.ts';

// Runs every tests/bench/*.bench.ts and prints one table. Arguments: --only PART (of a file's or a row's name),
// --json FILE. A row over its budget makes the run fail.

interface BenchFile {
  readonly bench: () => Promise<readonly BenchRow[]> | readonly BenchRow[];
}

const { values: options } = parseArgs({ options: { json: { type: 'string' }, only: { type: 'string' } } });
const fileNames = globSync('*.bench.ts', { cwd: import.meta.dirname }).sort();
const chosen = fileNames.filter((name) => name.includes(options.only ?? ''));

const rows: BenchRow[] = [];
for (const fileName of chosen.length > 0 ? chosen : fileNames) {
  const { bench } = (await import(join(import.meta.dirname, fileName))) as BenchFile;
  rows.push(...(await bench()));
}
const shown = chosen.length > 0 ? rows : rows.filter(({ name }) => name.includes(options.only ?? ''));

printTable(shown);
if (options.json) writeFileSync(options.json, `${JSON.stringify(shown, null, 2)}\n`);
const over = shown.filter(({ median, p95, budget, budgetAt }) => {
  return budget !== null && (budgetAt === 'median' ? median : p95) > budget;
});
for (const { name, size } of over) console.log(`Over its budget: ${name}, ${size}.`);
if (over.length > 0) process.exitCode = 1;

function printTable(table: readonly BenchRow[]): void {
  const head = ['name', 'size', 'median ms', 'p95 ms', 'budget ms', 'beside it', 'ratio'];
  const lines = [head, ...table.map(cells)];
  const widths = head.map((_, column) => Math.max(...lines.map((line) => line[column]!.length)));
  for (const line of lines) {
    const padded = line.map((cell, column) =>
      column === 0 ? cell.padEnd(widths[0]!) : cell.padStart(widths[column]!),
    );
    console.log(padded.join('  ').trimEnd());
  }
}

function cells({ name, size, median, p95, budget, other }: BenchRow): string[] {
  return [
    name,
    size.toLocaleString('en'),
    figure(median),
    figure(p95),
    budget === null ? '-' : figure(budget),
    other ? `${other.name} ${figure(other.median)} ms` : '-',
    other ? `${(other.median / median).toFixed(1)} x` : '-',
  ];
}

function figure(value: number): string {
  return value >= 100 ? value.toFixed(0) : value.toPrecision(3);
}
