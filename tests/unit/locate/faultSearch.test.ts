import { describe, expect, it } from 'vitest';
import {
  type Answer,
  withReading,
  withRepeat,
  withRingsOpened,
} from '../../../core/locate/faultSearch/faultSearchEdits.ts';
import { type FaultSearchGround, livePieces } from '../../../core/locate/faultSearch/faultSearchGround.ts';
import {
  type FaultSearchStep,
  type FaultSearchWalk,
  walkFaultSearch,
} from '../../../core/locate/faultSearch/faultSearchWalk.ts';
import type { FaultSearch } from '../../../core/model/faultSearchThings.ts';
import { randomNumbers } from '../../support/random.ts';

const at = '2026-05-01T08:00';

function newFaultSearch(more: Partial<FaultSearch> = {}): FaultSearch {
  return {
    kind: 'faultHunt',
    id: 'h',
    name: 'Search 1',
    startedAt: at,
    by: '',
    energiserId: 'e',
    saves: 'tests',
    lowBelowV: 3000,
    goodFromV: 4000,
    openedFirst: [],
    readings: [],
    end: null,
    note: '',
    ...more,
  };
}

/** A tree of pieces that grows anywhere, with some more switches that close rings. */
function randomGround(random: () => number): FaultSearchGround {
  const count = 1 + Math.floor(random() * 24);
  const rings = random() < 0.5 ? 0 : Math.floor(random() * 4);
  const pieces = Array.from({ length: count }, (_, section) => ({
    section,
    lengthM: 10 + Math.floor(random() * 3000),
  }));
  const switches = pieces.slice(1).map((_, i) => {
    const a = random() < 0.5 ? i : Math.floor(random() * (i + 1));
    return { id: `s${i + 1}`, a, b: i + 1, walkM: 100 + Math.floor(random() * 4000) };
  });
  for (let r = 0; r < rings && count > 2; r++) {
    const [a, b] = [Math.floor(random() * count), Math.floor(random() * count)];
    if (a !== b) switches.push({ id: `r${r}`, a, b, walkM: 100 + Math.floor(random() * 4000) });
  }
  return { energiserId: 'e', pieces, switches, source: 0 };
}

/** What the fence says with these faults. */
function truth(
  ground: FaultSearchGround,
  search: FaultSearch,
  { openIds }: FaultSearchStep,
  faults: readonly number[],
): Answer['result'] {
  const live = livePieces(ground, new Set([...search.openedFirst, ...openIds]));
  return faults.some((fault) => live.has(fault)) ? 'low' : 'good';
}

interface Walked {
  readonly search: FaultSearch;
  readonly walk: FaultSearchWalk;
  readonly tests: number;
  readonly contradictions: number;
  /** The lie was among the suspects whenever there was a contradiction about it. */
  readonly lieNamed: boolean;
}

/** Walks a search to its end; the `lieAt`-th reading after the first is told the wrong way round, once. */
function simulate(
  ground: FaultSearchGround,
  faults: readonly number[],
  { lieAt = -2, check = true, saves = 'tests' as FaultSearch['saves'] } = {},
): Walked {
  let search = newFaultSearch({ saves });
  let tests = 0;
  let contradictions = 0;
  let lieNamed = false;
  for (let round = 0; round < 200; round++) {
    const walk = walkFaultSearch(search, ground);
    const { state } = walk;
    if (state.kind === 'openFirst') search = withRingsOpened(search, state.switchIds);
    else if (state.kind === 'contradiction') {
      contradictions++;
      lieNamed ||= state.suspects.some(({ index }) => index === lieAt + 1);
      if (!state.repeat) throw new Error('nothing to repeat');
      const result = truth(ground, search, state.repeat, faults);
      search = withRepeat(search, state, '', { voltageV: null, result, doubtful: false }, at);
    } else if (state.kind === 'noFault' || (state.kind === 'found' && (!check || !state.step))) {
      return { search, walk, tests, contradictions, lieNamed };
    } else {
      const step = state.step!;
      if (step.check === 'test') tests++;
      const real = truth(ground, search, step, faults);
      const told = search.readings.length === lieAt + 1 ? (real === 'low' ? 'good' : 'low') : real;
      search = withReading(search, step, '', { voltageV: null, result: told, doubtful: false }, at);
    }
  }
  throw new Error('The walk does not end.');
}

function foundPiece({ walk: { state } }: Walked): number | null {
  return state.kind === 'found' ? state.piece : null;
}

describe('walking a fault', () => {
  it('finds every planted fault within the stated number of tests; the mean is the expected number', () => {
    const random = randomNumbers(5);
    for (let n = 0; n < 600; n++) {
      const ground = randomGround(random);
      let sum = 0;
      let totalM = 0;
      let planned = { most: 0, expected: 0 };
      for (const [fault, { lengthM }] of ground.pieces.entries()) {
        const walked = simulate(ground, [fault], { saves: n % 4 === 0 ? 'walking' : 'tests' });
        planned = walked.walk.planned;
        expect(foundPiece(walked)).toBe(fault);
        expect(walked.walk.state).toMatchObject({ confirmed: true });
        expect(walked.tests).toBeLessThanOrEqual(planned.most);
        expect(walked.contradictions).toBe(0);
        sum += walked.tests * lengthM;
        totalM += lengthM;
      }
      expect(Math.abs(sum / totalM - planned.expected)).toBeLessThanOrEqual(0.05 * planned.expected + 1e-9);
    }
  });

  it('tells after each reading how many tests are left at most, and keeps to it', () => {
    const random = randomNumbers(6);
    for (let n = 0; n < 300; n++) {
      const ground = randomGround(random);
      const fault = Math.floor(random() * ground.pieces.length);
      let search = newFaultSearch();
      let most = Infinity;
      for (let round = 0; round < 60; round++) {
        const { state } = walkFaultSearch(search, ground);
        if (state.kind === 'openFirst') search = withRingsOpened(search, state.switchIds);
        else if (state.kind === 'read') {
          const used = state.step.check === 'test' ? 1 : 0;
          expect(state.left.most).toBeLessThanOrEqual(most);
          expect(state.left.expected).toBeLessThanOrEqual(state.left.most + 1e-9);
          most = state.left.most - used;
          const result = truth(ground, search, state.step, [fault]);
          search = withReading(search, state.step, '', { voltageV: null, result, doubtful: false }, at);
        } else {
          expect(state).toMatchObject({ kind: 'found', piece: fault });
          break;
        }
      }
    }
  });

  it('with several faults at once still ends at one of them', () => {
    const random = randomNumbers(7);
    for (let n = 0; n < 1000; n++) {
      const ground = randomGround(random);
      const faults = Array.from({ length: 2 + Math.floor(random() * 2) }, () =>
        Math.floor(random() * ground.pieces.length),
      );
      const walked = simulate(ground, faults);
      expect(faults).toContain(foundPiece(walked));
      expect(walked.contradictions).toBe(0);
    }
  });

  it('notices one wrong answer, names it among what to repeat, and ends at the fault after all', () => {
    const random = randomNumbers(8);
    let noticed = 0;
    for (let n = 0; n < 1500; n++) {
      const ground = randomGround(random);
      const fault = Math.floor(random() * ground.pieces.length);
      const straight = simulate(ground, [fault]);
      const readings = straight.search.readings.length;
      if (readings < 2) continue;
      const lieAt = Math.floor(random() * (readings - 1));
      const walked = simulate(ground, [fault], { lieAt });
      expect(foundPiece(walked)).toBe(fault);
      expect(walked.walk.state).toMatchObject({ confirmed: true });
      expect(walked.contradictions).toBeGreaterThan(0);
      expect(walked.lieNamed).toBe(true);
      noticed++;
    }
    expect(noticed).toBeGreaterThan(1000);
  });

  it('does not call a piece sure where the readings at the end were not taken', () => {
    const random = randomNumbers(9);
    let misled = 0;
    for (let n = 0; n < 500; n++) {
      const ground = randomGround(random);
      const fault = Math.floor(random() * ground.pieces.length);
      const walked = simulate(ground, [fault], { lieAt: 0, check: false });
      const { state } = walked.walk;
      if (state.kind === 'found') expect(state.confirmed).toBe(false);
      if (foundPiece(walked) !== fault) misled++;
    }
    expect(misled).toBeGreaterThan(100);
  });

  it('puts a doubtful answer before others when something does not fit', () => {
    // A row of five: the fault is in the last one, and the first test was taken for low though it was not sure.
    const ground: FaultSearchGround = {
      energiserId: 'e',
      pieces: [0, 1, 2, 3, 4].map((section) => ({ section, lengthM: 100 })),
      switches: [1, 2, 3, 4].map((n) => ({ id: `s${n}`, a: n - 1, b: n, walkM: 100 * n })),
      source: 0,
    };
    let search = newFaultSearch();
    for (const [n, result, doubtful] of [
      [0, 'low', false],
      [1, 'low', true],
      [2, 'good', false],
      [3, 'good', false],
      [4, 'good', false],
    ] as const) {
      const { state } = walkFaultSearch(search, ground);
      if (state.kind === 'contradiction') break;
      expect(search.readings).toHaveLength(n);
      const step = (state as { step: FaultSearchStep }).step;
      search = withReading(search, step, '', { voltageV: null, result, doubtful }, at);
    }
    const { state } = walkFaultSearch(search, ground);
    expect(state.kind).toBe('contradiction');
    if (state.kind === 'contradiction') expect(state.suspects[0]!.reading.doubtful).toBe(true);
  });

  it('ends at once where the first reading is good, and where there is nothing to part', () => {
    const one: FaultSearchGround = { energiserId: 'e', pieces: [{ section: 0, lengthM: 50 }], switches: [], source: 0 };
    const good = withReading(
      newFaultSearch(),
      { check: 'start', switchId: null, openIds: [], toOpen: [], toClose: [] },
      '',
      { voltageV: 6000, result: 'good', doubtful: false },
      at,
    );
    expect(walkFaultSearch(good, one).state.kind).toBe('noFault');
    expect(foundPiece(simulate(one, [0]))).toBe(0);
  });
});
