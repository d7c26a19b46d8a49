import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Box } from '../../../core/geometry/box.ts';
import { type Label, labelSpots, placeLabels } from '../../../core/geometry/labelPlacement.ts';

const label = (id: string, x: number, y: number, more: Partial<Label<string>> = {}): Label<string> => ({
  id,
  anchor: [x, y],
  width: 10,
  height: 4,
  candidates: labelSpots(10, 4, 1),
  priority: 0,
  ...more,
});
const overlap = (a: Box, b: Box) => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

describe('placeLabels', () => {
  it('takes the best free place', () => {
    const { placed, hidden } = placeLabels([label('a', 0, 0), label('b', 0, 0)]);
    expect(placed.map(({ candidate }) => candidate)).toEqual([0, 2]);
    expect(placed[0]!.box).toEqual([1, 1, 11, 5]);
    expect(hidden).toEqual([]);
  });

  it('hides the less important where there is no room', () => {
    const only = { candidates: [[0, 0]] as const };
    const { placed, hidden } = placeLabels([
      label('small', 0, 0, only),
      label('large', 3, 0, { ...only, priority: 5 }),
    ]);
    expect(placed.map(({ id }) => id)).toEqual(['large']);
    expect(hidden).toEqual(['small']);
  });

  it('always keeps the pinned one, whatever is in the way', () => {
    const labels = [label('a', 0, 0, { priority: 9 }), label('chosen', 0, 0, { pinned: true, candidates: [[0, 0]] })];
    const { placed } = placeLabels(labels, { obstacles: [[-20, -20, 20, 20]], bounds: [100, 100, 200, 200] });
    expect(placed.map(({ id }) => id)).toEqual(['chosen']);
    expect(placeLabels([label('bare', 0, 0, { pinned: true, candidates: [] })]).placed[0]!.box).toEqual([-5, -2, 5, 2]);
  });

  it('keeps off obstacles and inside its bounds', () => {
    const { placed } = placeLabels([label('a', 0, 0)], { obstacles: [[0, 0, 3, 20]], bounds: [-15, -15, 5, 15] });
    expect(placed[0]!.candidate).toBe(3);
  });

  it('hides labels of no place', () => {
    expect(placeLabels([label('lost', Number.NaN, 0), label('none', 0, 0, { candidates: [] })]).hidden).toEqual([
      'lost',
      'none',
    ]);
  });

  it('never lets two overlap, and loses none', () => {
    const some = fc.record({
      x: fc.integer({ min: 0, max: 100 }),
      y: fc.integer({ min: 0, max: 100 }),
      width: fc.integer({ min: 1, max: 60 }),
      height: fc.integer({ min: 1, max: 12 }),
      priority: fc.integer({ min: 0, max: 3 }),
    });
    fc.assert(
      fc.property(fc.array(some, { maxLength: 60 }), (all) => {
        const labels = all.map(({ x, y, width, height, priority }, i) =>
          label(`${i}`, x, y, { width, height, priority, candidates: labelSpots(width, height, 1, true) }),
        );
        const obstacle: Box = [-1000, 40, 1000, 45];
        const { placed, hidden } = placeLabels(labels, { obstacles: [obstacle] });
        expect(placed.length + hidden.length).toBe(labels.length);
        for (const [i, { box }] of placed.entries()) {
          expect(overlap(box, obstacle)).toBe(false);
          for (const other of placed.slice(i + 1)) expect(overlap(box, other.box)).toBe(false);
        }
      }),
      { seed: 91 },
    );
  });
});

describe('labelSpots', () => {
  it('turns over where y grows downwards', () => {
    expect(labelSpots(10, 4, 1)[0]).toEqual([6, 3]);
    expect(labelSpots(10, 4, 1, true)[0]).toEqual([6, -3]);
    expect(labelSpots(10, 4, 1)[1]).toEqual([6, 0]);
  });
});
