import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { segmentIntersection, selfIntersections } from '../../../core/geometry/segments.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { between, xyDistanceM } from '../../../core/geometry/vector.ts';

describe('segmentIntersection', () => {
  it('crosses', () => {
    expect(segmentIntersection([0, 0], [4, 4], [0, 4], [4, 0])).toEqual({
      kind: 'cross',
      point: [2, 2],
      t: 0.5,
      u: 0.5,
    });
  });

  it('stays apart', () => {
    expect(segmentIntersection([0, 0], [4, 0], [0, 1], [4, 1]).kind).toBe('apart');
    expect(segmentIntersection([0, 0], [4, 0], [5, -1], [5, 1]).kind).toBe('apart');
    expect(segmentIntersection([0, 0], [1, 0], [2, 0], [3, 0]).kind).toBe('apart');
  });

  it('touches: an end on the other segment, or end to end', () => {
    expect(segmentIntersection([0, 0], [4, 0], [1, 0], [1, 3])).toEqual({
      kind: 'touch',
      point: [1, 0],
      t: 0.25,
      u: 0,
    });
    expect(segmentIntersection([0, 0], [4, 0], [4, 0], [9, 9])).toEqual({ kind: 'touch', point: [4, 0], t: 1, u: 0 });
    expect(segmentIntersection([0, 0], [4, 0], [4, 0], [7, 0])).toMatchObject({ kind: 'touch', t: 1, u: 0 });
  });

  it('touches within the tolerance asked for', () => {
    expect(segmentIntersection([0, 0], [4, 0], [1, 0.2], [1, 3], 0.3)).toMatchObject({
      kind: 'touch',
      point: [1, 0.2],
      t: 0.25,
    });
    expect(segmentIntersection([0, 0], [4, 0], [1, 0.2], [1, 3]).kind).toBe('apart');
  });

  it('overlaps along a stretch, given in the order of the first', () => {
    expect(segmentIntersection([0, 0], [4, 0], [6, 0], [1, 0])).toEqual({
      kind: 'overlap',
      from: { point: [1, 0], t: 0.25, u: 1 },
      to: { point: [4, 0], t: 1, u: 0.4 },
    });
    expect(segmentIntersection([0, 0], [4, 0], [1, 0], [2, 0])).toMatchObject({
      kind: 'overlap',
      from: { t: 0.25, u: 0 },
      to: { t: 0.5, u: 1 },
    });
  });

  it('takes segments without length for points', () => {
    expect(segmentIntersection([1, 0], [1, 0], [0, 0], [4, 0])).toMatchObject({
      kind: 'touch',
      point: [1, 0],
      u: 0.25,
    });
    expect(segmentIntersection([1, 0], [1, 0], [1, 0], [1, 0]).kind).toBe('touch');
    expect(segmentIntersection([1, 1], [1, 1], [0, 0], [4, 0]).kind).toBe('apart');
  });

  it('gives the same point on both segments, and the same answer either way round', () => {
    const vertex: fc.Arbitrary<Xy> = fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 }));
    fc.assert(
      fc.property(vertex, vertex, vertex, vertex, (a, b, c, d) => {
        const meeting = segmentIntersection(a, b, c, d);
        expect(segmentIntersection(c, d, a, b).kind).toBe(meeting.kind);
        if (meeting.kind === 'apart') return;
        for (const { point, t, u } of meeting.kind === 'overlap' ? [meeting.from, meeting.to] : [meeting]) {
          expect(xyDistanceM(between(a, b, t), point)).toBeLessThan(1e-6);
          expect(xyDistanceM(between(c, d, u), point)).toBeLessThan(1e-6);
        }
      }),
      { seed: 51, numRuns: 1000 },
    );
  });
});

describe('selfIntersections', () => {
  it('finds a loop', () => {
    const found = selfIntersections([
      [0, 0],
      [4, 0],
      [4, 4],
      [2, 4],
      [2, -2],
    ]);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ segments: [0, 3], meeting: { kind: 'cross', point: [2, 0] } });
  });

  it('finds a path that doubles back, and one that comes back to itself', () => {
    expect(
      selfIntersections([
        [0, 0],
        [4, 0],
        [2, 0],
      ])[0],
    ).toMatchObject({ segments: [0, 1], meeting: { kind: 'overlap' } });
    expect(
      selfIntersections([
        [0, 0],
        [4, 0],
        [4, 4],
        [2, 0],
      ])[0],
    ).toMatchObject({ segments: [0, 2], meeting: { kind: 'touch' } });
  });

  it('has nothing to say about simple, closed or doubled vertices', () => {
    expect(
      selfIntersections([
        [0, 0],
        [4, 0],
        [4, 4],
      ]),
    ).toEqual([]);
    expect(
      selfIntersections([
        [0, 0],
        [4, 0],
        [4, 0],
        [4, 4],
        [0, 4],
        [0, 0],
      ]),
    ).toEqual([]);
    expect(
      selfIntersections([
        [1, 1],
        [1, 1],
      ]),
    ).toEqual([]);
    expect(selfIntersections([])).toEqual([]);
  });

  it('agrees with looking at every pair', () => {
    const vertex: fc.Arbitrary<Xy> = fc.tuple(
      fc.double({ min: 0, max: 9, noNaN: true }),
      fc.double({ min: 0, max: 9, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(vertex, { minLength: 2, maxLength: 15 }), (path) => {
        fc.pre(path.every((at, i) => i === 0 || xyDistanceM(at, path[i - 1]!) > 0.01));
        const pairs: string[] = [];
        for (let i = 0; i + 1 < path.length; i++) {
          for (let j = i + 2; j + 1 < path.length; j++) {
            if (segmentIntersection(path[i]!, path[i + 1]!, path[j]!, path[j + 1]!).kind === 'cross')
              pairs.push(`${i} ${j}`);
          }
        }
        const found = selfIntersections(path).filter(({ meeting }) => meeting.kind === 'cross');
        expect(found.map(({ segments }) => segments.join(' '))).toEqual(pairs);
      }),
      { seed: 52 },
    );
  });
});
