import { expect, test } from 'vitest';
import { put } from '../../../core/model/project.ts';
import type { TestRun } from '../../../core/model/recordThings.ts';
import type { Reading } from '../../../core/model/things.ts';
import { latestRun, outcomeOf, testWalk, withResult } from '../../../core/record/testWalk.ts';
import type { TestSheet } from '../../../core/survey/types.ts';
import { at, drawing } from '../../support/drawings.ts';

const sheet = (section: string): TestSheet => {
  return { section, open: [], closed: [], cutOff: [], live: [section], readAt: [], steps: [] };
};
const sheets = ['A', 'B', 'C'].map(sheet);
const run: TestRun = {
  kind: 'testRun',
  id: 'run',
  name: 'Commissioning',
  date: '2031-05-02',
  by: '',
  meter: '',
  weather: '',
  results: [],
  finished: false,
  note: '',
};
const reading = (id: string, section: string, voltageV: number, runId = 'run'): Reading => {
  return {
    kind: 'reading',
    id,
    at: at([0, 0]),
    date: '2031-05-02',
    voltageV,
    currentA: null,
    openSwitchIds: [],
    section,
    runId,
    note: '',
  };
};

test('walks from section to section until each has a result', () => {
  const project = drawing();
  expect(testWalk(run, project, sheets).next).toBe('A');
  const one = { ...run, results: withResult(run.results, { section: 'A', outcome: 'passed', note: '' }) };
  expect(testWalk(one, project, sheets).next).toBe('B');
  let { results } = one;
  for (const section of ['B', 'C']) results = withResult(results, { section, outcome: 'leftOut', note: '' });
  expect(testWalk({ ...one, results }, project, sheets).next).toBeNull();
});

test('a section tested again has its new result only', () => {
  const failed = withResult([], { section: 'A', outcome: 'failed', note: 'low' });
  expect(withResult(failed, { section: 'A', outcome: 'passed', note: '' })).toEqual([
    { section: 'A', outcome: 'passed', note: '' },
  ]);
});

test("a run's readings lie at their section; those of another run do not", () => {
  const project = put(drawing(), reading('1', 'A', 6000), reading('2', 'A', 5000), reading('3', 'A', 1, 'other'));
  const [stop] = testWalk(run, project, sheets).stops;
  expect(stop!.readings.map(({ id }) => id)).toEqual(['1', '2']);
  expect(outcomeOf(stop!.readings, 4000)).toBe('passed');
  expect(outcomeOf(stop!.readings, 5500)).toBe('failed');
  expect(outcomeOf([], 4000)).toBeNull();
});

test('results of sections that are gone are kept, apart', () => {
  const old = { ...run, results: [{ section: 'Z', outcome: 'passed' as const, note: '' }] };
  expect(testWalk(old, drawing(), sheets).former.map(({ section }) => section)).toEqual(['Z']);
});

test('the run to go on with is the newest that is not finished', () => {
  const older = { ...run, id: 'older', date: '2030-01-01' };
  const done = { ...run, id: 'done', date: '2032-01-01', finished: true };
  expect(latestRun(put(drawing(), older, run, done))!.id).toBe('run');
  expect(latestRun(put(drawing(), done))!.id).toBe('done');
  expect(latestRun(drawing())).toBeNull();
});
