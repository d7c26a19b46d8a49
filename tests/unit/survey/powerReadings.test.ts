import { describe, expect, it } from 'vitest';
import { solveVoltage } from '../../../core/electrical/solveVoltage.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { setGrowth } from '../../../core/model/edits/setGrowth.ts';
import type { Reading, Thing } from '../../../core/model/things.ts';
import { estimateOf } from '../../../core/survey/power/estimateOf.ts';
import { fitReadings, readingRounds } from '../../../core/survey/power/fitReadings.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import { readingRows } from '../../../core/survey/power/readingRows.ts';
import { withNodesAt } from '../../../core/survey/power/withNodesAt.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { at, drawing, endSwitch, energiser, line, property } from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';

type Drawn = readonly (Thing | readonly Thing[])[];

function power(...things: Drawn) {
  const project = drawing(...things);
  return powerOf(project, surveyOf(project));
}

function reading(id: string, xy: Xy, voltageV: number, changes: Partial<Reading> = {}): Reading {
  return {
    kind: 'reading',
    id,
    at: at(xy),
    date: '2026-03-14',
    voltageV,
    currentA: null,
    openSwitchIds: [],
    note: '',
    ...changes,
  };
}

const lane = line('lane', [
  [0, 0],
  [4000, 0],
]);
const branch = line('branch', [
  [2000, 0],
  [2000, 3000],
]);
const fence = [energiser('E', [0, 0]), lane, branch, endSwitch('S', 'branch', 'start')];

describe('a reading beside its estimate', () => {
  it('is laid at the nearest node, or inside the run where none is near', () => {
    const made = power(
      fence,
      reading('end', [4003, 2], 7000),
      reading('mid', [1000, 8], 7500),
      reading('off', [900, 400], 1),
    );
    const rows = new Map(readingRows(made).map((row) => [row.reading.id, row]));
    const estimate = estimateOf(made);
    const endNode = made.survey.network.nodes.findIndex(({ xy: [x] }) => Math.abs(x - 4000) < 1e-6);
    expect(rows.get('end')).toMatchObject({
      spot: { on: 'lineEnd', end: 'end', line: 'lane' },
      place: { place: { on: 'node', node: endNode } },
    });
    expect(rows.get('end')!.estimateV).toBe(estimate.nodeV[endNode]);
    expect(rows.get('end')!.differenceV).toBeCloseTo(7000 - estimate.nodeV[endNode]!, 9);
    expect(rows.get('mid')!.spot).toEqual({ on: 'along', line: 'lane', atM: expect.closeTo(1000, 6) });
    expect(rows.get('mid')!.estimateV).toBeGreaterThan(rows.get('end')!.estimateV!);
    expect(rows.get('off')).toMatchObject({ spot: null, estimateV: null, differenceV: null });
  });

  it('takes the switches as they then stood, and the live side of an open one', () => {
    const open = { openSwitchIds: ['S'] };
    const made = power(fence, reading('far', [2000, 3000], 0, open), reading('at S', [2000, 0], 7000, open));
    const rows = new Map(readingRows(made).map((row) => [row.reading.id, row]));
    expect(rows.get('far')).toMatchObject({ estimateV: 0, differenceV: 0 });
    expect(rows.get('at S')!.estimateV).toBeGreaterThan(5000);
  });

  it('lists the newest first, and the rounds', () => {
    const made = power(
      fence,
      reading('a', [0, 0], 1, { date: '2025-11-02' }),
      reading('b', [0, 0], 1),
      reading('c', [0, 0], 1, { date: '2026-03-14T09:30' }),
    );
    expect(readingRows(made).map(({ reading: { id } }) => id)).toEqual(['c', 'b', 'a']);
    expect(readingRounds(made)).toEqual([
      { firstDay: '2026-03-14', lastDay: '2026-03-14', count: 2 },
      { firstDay: '2025-11-02', lastDay: '2025-11-02', count: 1 },
    ]);
  });
});

describe('rounds of readings', () => {
  it('hold together what was read within a week of the next', () => {
    const days = ['2025-03-04', '2025-03-05', '2025-03-11', '2025-03-20'];
    const made = power(
      fence,
      days.map((date, i) => reading(`r${i}`, [0, 0], 7000, { date })),
    );
    expect(readingRounds(made)).toEqual([
      { firstDay: '2025-03-20', lastDay: '2025-03-20', count: 1 },
      { firstDay: '2025-03-04', lastDay: '2025-03-11', count: 3 },
    ]);
  });
});

describe('a circuit with nodes put in', () => {
  it('is the same circuit', () => {
    const { circuit } = power(fence).supplies[0]!;
    const span = circuit.spans.findIndex(({ lengthM }) => lengthM > 1999);
    const places = [
      { on: 'span', span, distanceM: 1500 },
      { on: 'node', node: 0 },
      { on: 'span', span, distanceM: 700 },
    ] as const;
    const made = withNodesAt(circuit, places);
    expect(made.piecesOfSpan[span]).toHaveLength(3);
    expect(made.nodeOfPlace[1]).toBe(0);
    const [before, after] = [solveVoltage(circuit), solveVoltage(made.circuit)];
    if (!before.ok || !after.ok) throw new Error('refused');
    for (const [node, volts] of before.nodeVoltageV.entries()) expect(after.nodeVoltageV[node]).toBeCloseTo(volts, 8);
    expect(after.nodeVoltageV[made.nodeOfPlace[2]!]).toBeGreaterThan(after.nodeVoltageV[made.nodeOfPlace[0]!]!);
  });
});

describe('leakage fitted to readings', () => {
  /** What a tester would read if the branch leaked eight times its class and the lane just its class. */
  const truth = power(
    energiser('E', [0, 0]),
    lane,
    { ...branch, growth: { leakageOhmKm: 50_000 / 8 } },
    endSwitch('S', 'branch', 'start'),
  );
  const places: readonly (readonly [string, Xy])[] = [
    ['a', [0, 0]],
    ['b', [1000, 0]],
    ['c', [4000, 0]],
    ['d', [2000, 1200]],
    ['e', [2000, 3000]],
  ];
  const asRead = places.map(([id, xy]) => reading(id, xy, 0));
  const truthWith = power(
    ...[...truth.project.energiser.values()],
    ...[...truth.project.fenceLine.values()],
    ...[...truth.project.switch.values()],
    asRead,
  );
  const readings = readingRows(truthWith).map((row) => ({ ...row.reading, voltageV: row.estimateV }));
  const alone = readingRows(
    power(
      ...[...truth.project.energiser.values()],
      ...[...truth.project.fenceLine.values()],
      ...[...truth.project.switch.values()],
      reading('f', [0, 0], 0, { openSwitchIds: ['S'] }),
    ),
  );
  const opened = alone.map((row) => ({ ...row.reading, voltageV: row.estimateV }));

  it('finds the section that leaks, and its growth for one wire', () => {
    const made = power(fence, readings, opened);
    const { used, fits, messages } = fitReadings(made, readingRounds(made)[0]!);
    expect([used, messages]).toEqual([6, []]);
    const [fit] = fits;
    expect(fit!.mostLeaking).toBe('B');
    expect(fit!.sections.map(({ letter, verdict }) => [letter, verdict])).toEqual([
      ['A', 'told'],
      ['B', 'told'],
    ]);
    expect(fit!.sections[0]!.timesAssumed).toBeCloseTo(1, 2);
    expect(fit!.sections[1]!.timesAssumed).toBeCloseTo(8, 1);
    expect(fit!.ohmKmPerWireOfLine.get('branch')).toBeCloseTo(6250, -2);
    for (const { id, voltageV } of [...readings, ...opened]) expect(fit!.fittedV.get(id)).toBeCloseTo(voltageV!, 0);
  });

  it('put into the drawing, makes the estimate agree with the readings', () => {
    const made = power(fence, readings, opened);
    const { ohmKmPerWireOfLine } = fitReadings(made, null).fits[0]!;
    const growth = new Map([...ohmKmPerWireOfLine].map(([id, leakageOhmKm]) => [id, { leakageOhmKm }]));
    const project = setGrowth(growth)(made.project);
    for (const row of readingRows(powerOf(project, surveyOf(project))))
      expect(Math.abs(row.differenceV!)).toBeLessThan(5);
  });

  it('says so where one reading can’t tell sections apart', () => {
    const [fit] = fitReadings(power(fence, reading('one', [0, 0], 5000)), null).fits;
    expect(fit!.notToldApart.flat().sort()).toEqual(['A', 'B']);
    expect(fit!.sections.every(({ verdict }) => verdict === 'leaning')).toBe(true);
    expect(fit!.ohmKmPerWireOfLine.size).toBe(0);
  });

  it('has nothing to fit without readings, or for another round', () => {
    expect(fitReadings(power(fence), null)).toMatchObject({ used: 0, fits: [] });
    expect(
      fitReadings(power(fence, readings), { firstDay: '1999-01-01', lastDay: '1999-01-02', count: 0 }).messages.map(
        (said) => inEnglish(said),
      ),
    ).toHaveLength(1);
    expect(fitReadings(power(fence, property(), reading('off', [900, 900], 5)), null).used).toBe(0);
  });
});
