import type { Project } from '../model/project.ts';
import type { TestResult, TestRun } from '../model/recordThings.ts';
import type { Reading } from '../model/things.ts';
import type { TestSheet } from '../survey/types.ts';

/** A run through the test sheets, and how far it is. */
export interface TestWalk {
  readonly run: TestRun;
  /** Every sheet in the order in which they are walked, with its result once there is one. */
  readonly stops: readonly TestStop[];
  /** Letter of the section to test next; null when all are done or left out. */
  readonly next: string | null;
  /** Results of sections that are no longer there under that letter. */
  readonly former: readonly TestResult[];
}

export interface TestStop {
  readonly sheet: TestSheet;
  readonly result: TestResult | null;
  readonly readings: readonly Reading[];
}

/** Lays a run's results and readings beside the test sheets as they are now. */
export function testWalk(run: TestRun, project: Project, sheets: readonly TestSheet[]): TestWalk {
  const readings = [...project.reading.values()].filter(({ runId }) => runId === run.id);
  const stops = sheets.map(
    (sheet): TestStop => ({
      sheet,
      result: run.results.find(({ section }) => section === sheet.section) ?? null,
      readings: readings.filter(({ section }) => section === sheet.section),
    }),
  );
  const letters = new Set(sheets.map(({ section }) => section));
  return {
    run,
    stops,
    next: stops.find(({ result }) => result === null)?.sheet.section ?? null,
    former: run.results.filter(({ section }) => !letters.has(section)),
  };
}

/** The results with one section's in place of whatever it had. */
export function withResult(results: readonly TestResult[], result: TestResult): TestResult[] {
  return [...results.filter(({ section }) => section !== result.section), result];
}

/**
 * What the readings of a section say by themselves: passed where every one is as usual at its place, failed where one is
 * low or does not hold the stock, doubtful between; null where none was taken. A reading without a yardstick is judged by
 * what holds the stock.
 */
export function outcomeOf(
  readings: readonly Pick<Reading, 'voltageV' | 'yardstick'>[],
  stockMinimumV: number,
): 'passed' | 'failed' | 'doubtful' | null {
  const taken = readings.filter(({ voltageV }) => voltageV !== null);
  if (taken.length === 0) return null;
  const isUnder = (limit: 'lowBelowV' | 'goodFromV') =>
    taken.some(({ voltageV, yardstick }) => voltageV! < Math.max(stockMinimumV, yardstick?.[limit] ?? 0));
  if (isUnder('lowBelowV')) return 'failed';
  return isUnder('goodFromV') ? 'doubtful' : 'passed';
}

/** The run that was begun last and is not finished, or else the newest; null without any. */
export function latestRun(project: Project): TestRun | null {
  const runs = [...project.testRun.values()].sort((a, b) => b.date.localeCompare(a.date));
  return runs.find(({ finished }) => !finished) ?? runs[0] ?? null;
}
