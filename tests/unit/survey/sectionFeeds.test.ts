import { describe, expect, it } from 'vitest';
import type { Thing } from '../../../core/model/things.ts';
import { ringAdvice } from '../../../core/survey/ringAdvice.ts';
import { sectionFeeds } from '../../../core/survey/sectionFeeds.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { cutOut, drawing, endSwitch, energiser, leadOut, line, lineSwitch } from '../../support/drawings.ts';

const feeds = (...things: readonly (Thing | readonly Thing[])[]) =>
  Object.fromEntries(
    [...sectionFeeds(surveyOf(drawing(...things)))].map(([letter, ways]) => [
      letter,
      ways.map(({ switchId, from }) => `${switchId} from ${from ?? 'the lead-out'}`).sort(),
    ]),
  );

const supply = [
  energiser('E', [0, -20]),
  leadOut('L', 'E', [
    [0, -20],
    [0, 0],
  ]),
];
const lane = line('lane', [
  [0, 0],
  [1000, 0],
]);
/** From the lane and back to it, with a switch at either end and one in the middle. */
const loop = line('loop', [
  [100, 0],
  [100, 200],
  [300, 200],
  [300, 0],
]);
const ends = [endSwitch('S', 'loop', 'start'), endSwitch('T', 'loop', 'end')];

describe('which way sections are fed', () => {
  it('along a branch: through its one switch', () => {
    const branch = line('b', [
      [700, 0],
      [700, 250],
    ]);
    expect(feeds(supply, lane, branch, endSwitch('S', 'b', 'start'))).toEqual({ A: [], B: ['S from A'] });
  });

  it('in a ring: through each switch that current comes by', () => {
    expect(feeds(supply, lane, loop, ends, lineSwitch('M', 'loop', 300))).toEqual({
      A: [],
      B: ['M from C', 'S from A'],
      C: ['M from B', 'T from A'],
    });
  });

  it('with one of them standing open: one way each', () => {
    expect(feeds(supply, lane, loop, ends, lineSwitch('M', 'loop', 300, { normally: 'open' }))).toEqual({
      A: [],
      B: ['S from A'],
      C: ['T from A'],
    });
  });

  it('a section that a ring hangs on is not fed by the ring', () => {
    const main = cutOut('K', { on: 'leadOut', leadOutId: 'L' });
    expect(feeds(supply, main, lane, loop, ends)).toEqual({ A: ['K from the lead-out'], B: ['S from A', 'T from A'] });
  });

  it('from two energisers, each behind a switch at its lead-out: through both', () => {
    const second = [
      energiser('E2', [1000, -20]),
      leadOut('L2', 'E2', [
        [1000, -20],
        [1000, 0],
      ]),
    ];
    const switches = ['L', 'L2'].map((id) => cutOut(`K-${id}`, { on: 'leadOut', leadOutId: id }));
    expect(feeds(supply, second, lane, switches)).toEqual({ A: ['K-L from the lead-out', 'K-L2 from the lead-out'] });
  });

  it('nothing feeds what is dead', () => {
    expect(feeds(lane)).toEqual({ A: [] });
  });
});

describe('which ring switch should stand open', () => {
  const advice = (...things: readonly (Thing | readonly Thing[])[]) => ringAdvice(surveyOf(drawing(...things)));
  const middle = lineSwitch('M', 'loop', 300);

  it('is the one that leaves every section its shortest way', () => {
    // B, from 100 to the middle of the loop, is nearest by S; C, shorter, by T: so M, where the ways meet, stands open.
    expect(advice(supply, lane, loop, ends, middle)).toEqual({
      ringSwitchIds: ['M', 'S', 'T'],
      openIds: ['M'],
      settled: false,
    });
  });

  it('is settled once it stands that way', () => {
    const open = { ...middle, normally: 'open' } as const;
    expect(advice(supply, lane, loop, ends, open)).toMatchObject({ openIds: ['M'], settled: true });
  });

  it('is not asked where there is no ring', () => {
    expect(advice(supply, lane)).toBeNull();
    expect(advice(lane, loop, ends, middle)).toBeNull();
  });
});
