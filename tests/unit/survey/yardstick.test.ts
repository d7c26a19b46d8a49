import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoThings } from '../../../assets/demo/makeDemo.ts';
import type { FaultSearch } from '../../../core/model/faultSearchThings.ts';
import { projectOf } from '../../../core/model/project.ts';
import type { TestRun } from '../../../core/model/recordThings.ts';
import type { Energiser, Reading, Thing } from '../../../core/model/things.ts';
import { outcomeOf } from '../../../core/record/testWalk.ts';
import { switchesOff, usualFigure, yardstickSentence } from '../../../core/sheets/yardstickInWords.ts';
import { estimateOf } from '../../../core/survey/power/estimateOf.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import { openForSheet, sheetYardsticks } from '../../../core/survey/power/sheetYardsticks.ts';
import type { Power } from '../../../core/survey/power/types.ts';
import { limitsFor, nodeAtSwitch, standingOf, yardstickAt } from '../../../core/survey/power/yardstick.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { testSheets } from '../../../core/survey/testSheets.ts';
import { at, drawing, endSwitch, energiser, line, lineSwitch, property } from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';

type Drawn = readonly (Thing | readonly Thing[])[];

function power(...things: Drawn): Power {
  const project = drawing(...things);
  return powerOf(project, surveyOf(project));
}

let count = 0;
const reading = (voltageV: number, changes: Partial<Reading> = {}): Reading => ({
  kind: 'reading',
  id: `r${++count}`,
  at: at([2000, 0]),
  date: '2026-03-03',
  voltageV,
  currentA: null,
  openSwitchIds: ['S'],
  note: '',
  ...changes,
});

/** A lane with a branch behind S, and T further out on the branch. */
const fence = [
  energiser('E', [0, 0]),
  line('lane', [
    [0, 0],
    [4000, 0],
  ]),
  line('branch', [
    [2000, 0],
    [2000, 3000],
  ]),
  endSwitch('S', 'branch', 'start'),
  lineSwitch('T', 'branch', 2000),
];
const open = new Set(['S']);

/** What a reading at S, S off, is judged by. */
const atS = (...things: Drawn) => judgedAtS(power(fence, ...things));

function judgedAtS(made: Power, runId?: string) {
  const standing = standingOf(made, open);
  return yardstickAt(made, { node: nodeAtSwitch(made, 'S', standing)!, standing, ...(runId ? { runId } : {}) });
}

describe('the limits of a reading', () => {
  it('are shares of what is usual, never under what holds the stock', () => {
    expect(limitsFor(4000, 8100)).toEqual({ goodFromV: 6100, lowBelowV: 4900 });
    expect(limitsFor(4000, 5000)).toEqual({ goodFromV: 4000, lowBelowV: 3000 });
    expect(limitsFor(4000, 2000)).toEqual({ goodFromV: 4000, lowBelowV: 3000 });
    expect(limitsFor(4000, null)).toEqual({ goodFromV: 4000, lowBelowV: 3000 });
    expect(limitsFor(0, 6000)).toEqual({ goodFromV: 4500, lowBelowV: 3600 });
  });

  it('stand in order, and call half of what is usual low', () => {
    const volts = fc.integer({ min: 0, max: 20_000 });
    fc.assert(
      fc.property(volts, volts, (stockV, usualV) => {
        const { lowBelowV, goodFromV } = limitsFor(stockV, usualV);
        expect(lowBelowV).toBeLessThanOrEqual(goodFromV + 50);
        expect(goodFromV).toBeGreaterThanOrEqual(stockV);
        if (usualV >= 1000) expect(usualV / 2).toBeLessThan(lowBelowV);
      }),
      { seed: 1, numRuns: 2000 },
    );
  });
});

describe('what a place usually reads', () => {
  it('is the estimate there with those switches off', () => {
    const made = power(fence);
    const node = nodeAtSwitch(made, 'S', standingOf(made, open))!;
    const yardstick = judgedAtS(made);
    expect(yardstick).toMatchObject({ by: 'estimate', usualV: estimateOf(made, open).nodeV[node] });
    // On the energiser's side: the other one is dead.
    expect(made.survey.network.nodes[node]!.roles).toContain('junction');
    expect(yardstick.usualV).toBeGreaterThan(5000);
    // With more of the fence off there is less to feed.
    const closed = yardstickAt(made, { node, standing: standingOf(made, new Set()) });
    expect(closed.usualV).toBeLessThan(yardstick.usualV!);
  });

  it('is what was read there before, rather than the estimate', () => {
    expect(atS(reading(6400))).toEqual({ usualV: 6400, by: 'reading', readOn: '2026-03-03', ...limitsFor(4000, 6400) });
    expect(inEnglish(usualFigure(atS(reading(6400))))).toBe('6.4 kV, read on 3 March 2026');
  });

  it('is the middle of the last readings, a slip among them does not count', () => {
    const rounds = [7000, 6400, 5500, 6600, 6500, 6300].map((voltageV, i) =>
      reading(voltageV, { date: `2026-0${i + 1}-01` }),
    );
    expect(atS(rounds)).toMatchObject({ usualV: 6400, readOn: '2026-02-01' });
  });

  it.each<[string, Drawn]>([
    ['at another place', [reading(6400, { at: at([2000, 40]) })]],
    ['with other switches off', [reading(6400, { openSwitchIds: [] })]],
    ['with a switch off that is gone', [reading(6400, { openSwitchIds: ['S', 'gone'] })]],
    ['of a current only', [{ ...reading(0), voltageV: null }]],
    ['that does not hold the stock', [reading(3900)]],
    ['far under the estimate', [reading(4300)]],
    ['far over the estimate, of another energiser', [reading(12_000)]],
    [
      'taken while a fault was searched for',
      [reading(6400, { date: '2026-05-02' }), search('2026-05-01', '2026-05-03')],
    ],
    ['taken since a search that goes on', [reading(6400, { date: '2026-05-02' }), search('2026-05-01', null)]],
    ['of a section that failed', [reading(6400, { runId: 'run', section: 'A' }), run('failed')]],
    ['of a section that is not done with', [reading(6400, { runId: 'run', section: 'B' }), run('passed')]],
  ])('is not a reading %s', (_, things) => {
    expect(atS(...things)).toMatchObject({ by: 'estimate' });
  });

  it('takes readings before and after a search, and those of a section that passed', () => {
    const around = [reading(6400, { date: '2026-04-30' }), search('2026-05-01', '2026-05-03')];
    expect(atS(...around)).toMatchObject({ by: 'reading', usualV: 6400 });
    expect(atS(reading(6400, { date: '2026-05-04T09:00' }), around[1]!)).toMatchObject({ readOn: '2026-05-04' });
    expect(atS(reading(6400, { runId: 'run', section: 'A' }), run('passed'))).toMatchObject({ by: 'reading' });
  });

  it('a search on another energiser’s fence is no matter here', () => {
    expect(atS(reading(6400, { date: '2026-05-02' }), search('2026-05-01', null, 'other'))).toMatchObject({
      by: 'reading',
    });
  });

  it('does not mind switches in what is dead anyway', () => {
    expect(atS(reading(6400, { openSwitchIds: ['S', 'T'] }))).toMatchObject({ by: 'reading', usualV: 6400 });
  });

  it('does not sink step by step with readings that were each a little lower', () => {
    const sinking = [7000, 6000, 5200, 4500].map((voltageV, i) => reading(voltageV, { date: `2026-0${i + 1}-01` }));
    expect(atS(sinking).usualV).toBeGreaterThanOrEqual(6000);
  });

  it('the readings of the run itself are no yardstick for it', () => {
    const made = power(fence, reading(6400, { runId: 'run', section: 'A' }), run('passed'));
    expect(judgedAtS(made, 'run')).toMatchObject({ by: 'estimate' });
  });

  it('is not known without the energiser’s figures: only what holds the stock counts, and that is said', () => {
    const blank: Energiser = { ...energiser('E', [0, 0]), openCircuitV: 0, into500OhmV: 0 };
    const made = power(blank, ...fence.slice(1));
    const yardstick = judgedAtS(made);
    expect(yardstick).toEqual({ usualV: null, by: 'stock', goodFromV: 4000, lowBelowV: 3000 });
    expect(inEnglish(yardstickSentence(yardstick, switchesOff(made.project, open)))).toBe(
      'What is usual here is not known, so only what holds the stock counts; under 3.0 kV is low, from 4.0 kV good.',
    );
    const read = power(blank, ...fence.slice(1), reading(6400));
    expect(judgedAtS(read)).toMatchObject({ usualV: 6400 });
  });

  it('is said with the switches, and that an estimate is one', () => {
    const made = power(fence);
    const yardstick = judgedAtS(made);
    expect(inEnglish(yardstickSentence(yardstick, switchesOff(made.project, open)))).toMatch(
      /^Usual here: \d\.\d kV, estimated with S off; under \d\.\d kV is low, from \d\.\d kV good\.$/,
    );
  });
});

describe('the run through the test sheets', () => {
  it('on the demo: 4.1 kV in a section that should read over 7 kV is not passed', () => {
    const project = projectOf(demoThings());
    const made = powerOf(project, surveyOf(project));
    const judged = testSheets(project, made.survey).flatMap((sheet) => sheetYardsticks(made, sheet));
    const over7 = judged.filter(({ usualV }) => usualV! > 7000);
    expect(over7.length).toBeGreaterThan(5);
    for (const yardstick of over7) {
      expect(outcomeOf([{ voltageV: 4100, yardstick }], 4000)).toBe('failed');
      expect(outcomeOf([{ voltageV: 7000, yardstick }], 4000)).toBe('passed');
    }
  });

  it('has a doubtful outcome between, and fails what does not hold the stock', () => {
    const yardstick = { usualV: 8000, by: 'estimate', ...limitsFor(4000, 8000) } as const;
    const outcome = (...volts: (number | null)[]) =>
      outcomeOf(
        volts.map((voltageV) => ({ voltageV, yardstick })),
        4000,
      );
    expect([outcome(8000, 6000), outcome(8000, 5900), outcome(8000, 4700), outcome(null)]).toEqual([
      'passed',
      'doubtful',
      'failed',
      null,
    ]);
    const weak = { usualV: 4200, by: 'estimate', ...limitsFor(4000, 4200) } as const;
    expect(outcomeOf([{ voltageV: 3900, yardstick: weak }], 4000)).toBe('failed');
  });

  it('takes a switch that normally stands off for off, unless the way leads through it', () => {
    const made = power(
      property(),
      ...fence.slice(0, 4),
      lineSwitch('T', 'branch', 2000, { normally: 'open' }),
      lineSwitch('U', 'lane', 3000, { normally: 'open' }),
    );
    const sheets = new Map(testSheets(made.project, made.survey).map((sheet) => [sheet.section, sheet]));
    const beyondT = [...sheets.values()].find(({ closed }) => closed.includes('T'))!;
    expect([...openForSheet(made, beyondT)].sort()).toEqual(['U']);
    expect([...openForSheet(made, sheets.get('A')!)].sort()).toEqual(['S', 'T', 'U']);
  });
});

function search(startedAt: string, endedAt: string | null, energiserId = 'E'): FaultSearch {
  const end = endedAt && {
    at: endedAt,
    outcome: 'found' as const,
    section: 'A',
    place: '',
    confirmed: true,
    cause: '',
  };
  return {
    kind: 'faultHunt',
    id: `h-${startedAt}`,
    name: 'Search',
    startedAt: `${startedAt}T08:00`,
    by: '',
    energiserId,
    saves: 'tests',
    lowBelowV: 3000,
    goodFromV: 4000,
    openedFirst: [],
    readings: [],
    end: end || null,
    note: '',
  };
}

function run(outcome: 'passed' | 'failed'): TestRun {
  return {
    kind: 'testRun',
    id: 'run',
    name: 'Commissioning',
    date: '2026-03-03',
    by: '',
    meter: '',
    weather: '',
    results: [{ section: 'A', outcome, note: '' }],
    finished: true,
    note: '',
  };
}
