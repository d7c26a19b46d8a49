import { readFileSync } from 'node:fs';
import type { SheetOptions } from '../../core/api/sheetOptions.ts';
import { projectOf } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { suggestedScales } from '../../core/sheets/scales.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { printJob } from '../../electron/print/printJob.ts';
import { largeProperty } from '../support/largeProperty.ts';
import type { BenchRow } from './row.ts';

const printSheets = (things: readonly Thing[], options: SheetOptions) => printJob({ what: 'sheets', options }, things);

const demoFile = new URL('../../assets/demo/demo-property.json', import.meta.url);

const everything: SheetOptions = {
  paper: 'A3',
  orientation: 'landscape',
  scaleDenominator: 10_000,
  centre: null,
  gridM: null,
  withSwitchRegister: true,
  withCrossingSchedule: true,
  withTestSheets: true,
  date: '2026-05-12',
};

export async function bench(): Promise<BenchRow[]> {
  const demo = JSON.parse(readFileSync(demoFile, 'utf8')) as Thing[];
  const large = Object.values(largeProperty(2000)).flatMap((table) => [...table.values()]) as Thing[];
  const project = projectOf(large);
  const fit = suggestedScales(surveyOf(project), project, everything).at(-1)!.scaleDenominator;
  return [
    await printRow('print the demo, one A3 sheet and all tables', demo, everything, 2000),
    await printRow(
      'print the demo at 1:5,000 on A4 sheets',
      demo,
      { ...everything, paper: 'A4', scaleDenominator: 5000 },
      4000,
    ),
    await printRow('print 2,000 runs on one A3 sheet, map only', large, { ...mapOnly, scaleDenominator: fit }, null),
  ];
}

const mapOnly: SheetOptions = {
  ...everything,
  withSwitchRegister: false,
  withCrossingSchedule: false,
  withTestSheets: false,
};

async function printRow(
  name: string,
  things: readonly Thing[],
  options: SheetOptions,
  budget: number | null,
): Promise<BenchRow> {
  const times: number[] = [];
  await printSheets(things, options);
  for (let i = 0; i < 7; i++) {
    const start = performance.now();
    await printSheets(things, options);
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  return { name, size: things.length, median: times[3]!, p95: times[6]!, unit: 'ms', budget };
}
