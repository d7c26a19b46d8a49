import { describe, expect, it } from 'vitest';
import { allFindings } from '../../../core/checks/allFindings.ts';
import { type Change, difference } from '../../../core/model/difference.ts';
import { allThings, type Project, put } from '../../../core/model/project.ts';
import { dividePlan } from '../../../core/survey/dividePlan.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import { powerTables } from '../../../core/survey/power/powerTables.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import type { FromAnalysis, ToAnalysis } from '../../../renderer/work/analysisMessages.ts';
import { AnalysisRoom, gatherMs, mostGatherMs, restMs, soonMs } from '../../../renderer/work/analysisRoom.ts';
import { bridgedGateway, drawing, energiser, gateSwitch, leadOut, line, property } from '../../support/drawings.ts';
import { largeProperty } from '../../support/largeProperty.ts';

/** A room whose clock is moved by hand, one slice at a time: each look at the clock takes a millisecond. */
class Bench {
  readonly sent: FromAnalysis[] = [];
  readonly room: AnalysisRoom;
  nowMs = 1000;
  #listening: (() => void) | null = null;
  #later: { readonly atMs: number; readonly then: () => void } | null = null;

  constructor() {
    this.room = new AnalysisRoom((message) => this.sent.push(structuredClone(message)), {
      now: () => this.nowMs++,
      listen: (then) => {
        this.#listening = then;
      },
      later: (ms, then) => {
        const timer = { atMs: this.nowMs + ms, then };
        this.#later = timer;
        return () => {
          if (this.#later === timer) this.#later = null;
        };
      },
    });
  }

  hear(...messages: readonly ToAnalysis[]): void {
    for (const message of messages) this.room.hear(message);
  }

  /** One slice, or a wait for the next one. False when there is nothing to do. */
  turn(): boolean {
    const then = this.#listening ?? this.#later?.then;
    if (!this.#listening && this.#later) this.nowMs = Math.max(this.nowMs, this.#later.atMs);
    if (!then) return false;
    if (this.#listening) this.#listening = null;
    else this.#later = null;
    then();
    return true;
  }

  /** Works until nothing is left, or until `enough`. */
  run(enough: () => boolean = () => false): void {
    while (!enough() && this.turn());
  }

  of<T extends FromAnalysis['type']>(type: T): Extract<FromAnalysis, { type: T }>[] {
    return this.sent.filter((message): message is Extract<FromAnalysis, { type: T }> => message.type === type);
  }
}

const fence = drawing(
  property({ divide: { ...property().divide, maxSectionM: 1200 } }),
  energiser('E', [0, -20]),
  leadOut('L', 'E', [
    [0, -20],
    [0, 0],
  ]),
  line('lane', [
    [0, 0],
    [2000, 0],
  ]),
  [500, 1000, 1500].flatMap((atM, i) => bridgedGateway(`G${i + 1}`, 'lane', atM)),
);

const reset = (project: Project, revision: number): ToAnalysis => {
  return { type: 'reset', things: [...allThings(project)], revision };
};
const edits = (before: Project, after: Project): readonly Change[] => difference(before, after);
const changed = (before: Project, after: Project, revision: number): ToAnalysis => {
  return { type: 'changed', changes: edits(before, after), revision };
};
const withSwitch = put(fence, gateSwitch('S', 'G1', 'start'));
const rings = largeProperty(300);

describe('what is worked out beside the window', () => {
  it('is what is worked out at once', () => {
    const bench = new Bench();
    bench.hear(reset(withSwitch, 7));
    bench.run();
    const survey = surveyOf(withSwitch);
    expect(bench.sent.map(({ revision }) => revision)).toEqual(bench.sent.map(() => 7));
    expect(bench.of('findings').map(({ findings }) => findings.map(({ id }) => id))).toEqual([
      allFindings(withSwitch, survey).map(({ id }) => id),
    ]);
    expect(bench.of('power').map(({ tables }) => tables)).toEqual([powerTables(powerOf(withSwitch, survey))]);
    expect(bench.of('plan').map(({ plan }) => plan)).toEqual([dividePlan(withSwitch, survey)]);
    expect(bench.of('fit')).toHaveLength(1);
    expect(bench.sent.at(-1)!.type).toBe('settled');
  });

  it('comes in this order: findings, then what is on the screen, then the rest when the user rests', () => {
    const inOrder = (shown: 'plan' | 'power' | null) => {
      const bench = new Bench();
      bench.hear({ type: 'shown', shown }, reset(fence, 1));
      const atMs = new Map<string, number>();
      bench.run(() => {
        for (const { type } of bench.sent) if (!atMs.has(type)) atMs.set(type, bench.nowMs - 1000);
        return false;
      });
      return { order: [...atMs.keys()].filter((type) => !['planning', 'settled'].includes(type)), atMs };
    };
    const nothing = inOrder(null);
    expect(nothing.order).toEqual(['findings', 'power', 'plan', 'fit']);
    expect(nothing.atMs.get('findings')).toBeLessThan(gatherMs);
    expect(nothing.atMs.get('power')).toBeGreaterThanOrEqual(restMs - soonMs);
    const divide = inOrder('plan');
    expect(divide.order).toEqual(['findings', 'plan', 'power', 'fit']);
    expect(divide.atMs.get('plan')).toBeLessThan(soonMs);
    expect(divide.atMs.get('power')).toBeGreaterThanOrEqual(restMs - soonMs);
    const power = inOrder('power');
    expect(power.order).toEqual(['findings', 'power', 'fit', 'plan']);
    expect(power.atMs.get('fit')).toBeLessThan(soonMs);
    expect(power.atMs.get('plan')).toBeGreaterThanOrEqual(restMs - soonMs);
  });

  it('begins at once when the page that shows it is opened', () => {
    const bench = new Bench();
    bench.hear(reset(fence, 1));
    bench.run(() => bench.of('findings').length > 0);
    bench.hear({ type: 'shown', shown: 'plan' });
    const before = bench.nowMs;
    bench.run(() => bench.of('plan').length > 0);
    expect(bench.nowMs - before).toBeLessThan(soonMs);
  });
});

describe('an edit', () => {
  it('is gathered with those after it; the checks come when none has come for a moment, and then only once', () => {
    const bench = new Bench();
    bench.hear(reset(fence, 1));
    bench.run();
    bench.sent.length = 0;
    bench.hear(changed(fence, withSwitch, 2));
    bench.nowMs += gatherMs / 2;
    bench.hear(changed(withSwitch, fence, 3));
    const editedAt = bench.nowMs;
    bench.run(() => bench.of('findings').length > 0);
    expect(bench.nowMs - editedAt).toBeGreaterThanOrEqual(gatherMs);
    bench.run();
    expect(bench.of('findings').map(({ revision }) => revision)).toEqual([3]);
    expect(bench.of('plan').map(({ revision }) => revision)).toEqual([3]);
  });

  it('does not put the checks off for ever when edits keep coming', () => {
    const bench = new Bench();
    bench.hear(reset(fence, 1));
    bench.run();
    bench.sent.length = 0;
    let [before, after] = [fence, withSwitch];
    const startedAt = bench.nowMs;
    for (let revision = 2; bench.of('findings').length === 0 && revision < 60; revision++) {
      bench.hear(changed(before, after, revision));
      [before, after] = [after, before];
      const nextAt = bench.nowMs + 200;
      while (bench.nowMs < nextAt && bench.of('findings').length === 0 && bench.turn());
    }
    expect(bench.of('findings')).toHaveLength(1);
    expect(bench.nowMs - startedAt).toBeLessThan(mostGatherMs + 1000);
  });

  it('drops what was begun for the state before, at the next slice, and nothing of that is ever sent', () => {
    const bench = new Bench();
    bench.hear({ type: 'shown', shown: 'plan' }, reset(rings, 1));
    // In the middle of the plan.
    bench.run(() => bench.of('planning').length > 0);
    for (let slice = 0; slice < 5; slice++) bench.turn();
    expect(bench.of('plan')).toEqual([]);
    const gateway = [...rings.gateway.values()][0]!;
    const moved = put(rings, { ...gateway, atM: gateway.atM + 1 });
    bench.hear(changed(rings, moved, 2));
    const heardAt = bench.sent.length;
    bench.run();
    const after = bench.sent.slice(heardAt);
    expect(after.every(({ revision }) => revision === 2)).toBe(true);
    expect(bench.of('plan').at(-1)!.plan).toEqual(dividePlan(moved, surveyOf(moved)));
    expect(
      bench
        .of('findings')
        .at(-1)!
        .findings.map(({ id }) => id),
    ).toEqual(allFindings(moved, surveyOf(moved)).map(({ id }) => id));
  });
});

describe('a plan on the way', () => {
  /** The plan of a property with rings, some slices after its first answer. */
  const onTheWay = (): Bench => {
    const bench = new Bench();
    bench.hear({ type: 'shown', shown: 'plan' }, reset(largeProperty(2000), 1));
    bench.run(() => bench.of('plan').length > 0);
    return bench;
  };

  it('is shown to who looks on, with how far it is, each no dearer than the one before', () => {
    const bench = onTheWay();
    expect(bench.of('plan')[0]!.plan).toMatchObject({ complete: false });
    bench.run();
    const costs = bench.of('plan').map(({ plan }) => plan!.cost);
    expect(costs.length).toBeGreaterThan(1);
    expect(costs).toEqual([...costs].sort((a, b) => b - a));
    expect(bench.of('plan').at(-1)!.plan).toMatchObject({ complete: true });
    const fractions = bench.of('planning').map(({ fraction }) => fraction);
    expect(fractions.at(-1)).toBeNull();
    expect(fractions.slice(0, -1).every((fraction) => fraction !== null && fraction >= 0 && fraction <= 1)).toBe(true);
  });

  it('is kept as it is when it is stopped, and gone on with from there', () => {
    const bench = onTheWay();
    bench.hear({ type: 'stopPlan' });
    const stopped = bench.of('plan').at(-1)!.plan!;
    expect(stopped.complete).toBe(false);
    expect(bench.of('planning').at(-1)!.fraction).toBeNull();
    bench.run();
    expect(bench.of('plan').at(-1)!.plan).toEqual(stopped);
    expect(bench.sent.at(-1)!.type).toBe('settled');
    bench.hear({ type: 'goOnPlan' });
    bench.run();
    expect(bench.of('plan').at(-1)!.plan).toEqual(dividePlan(largeProperty(2000), surveyOf(largeProperty(2000))));
  });
});

describe('what fails', () => {
  it('is told by its part; the rest is worked out all the same', () => {
    const bench = new Bench();
    // A gateway on a line that has no path: nothing that the window lets through.
    const broken = { ...fence.fenceLine.get('lane')!, path: null } as never;
    bench.hear(reset(put(fence, broken), 1));
    bench.run();
    expect(bench.of('failed').map(({ part }) => part)).toEqual(['findings', 'power', 'plan', 'fit']);
    expect(bench.sent.at(-1)!.type).toBe('settled');
  });

  it('is told at once where an edit does not fit the copy, and nothing goes on with that', () => {
    const bench = new Bench();
    bench.hear(reset(fence, 1));
    bench.run();
    bench.sent.length = 0;
    bench.hear({ type: 'changed', changes: null as never, revision: 2 });
    bench.run();
    expect(bench.sent).toMatchObject([{ type: 'failed', part: null, revision: 2 }]);
  });
});
