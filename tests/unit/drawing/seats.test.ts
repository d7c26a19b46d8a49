import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PaperBox, PaperPoint } from '../../../core/drawing/displayList.ts';
import { type SeatField, type SeatRequest, seatLabels } from '../../../core/drawing/labels/seats.ts';

interface Label extends SeatRequest<PaperPoint> {
  readonly id: string;
  readonly anchor: PaperPoint;
  readonly width: number;
  readonly height: number;
}

const spots = (width: number, height: number): PaperPoint[] => [
  [width / 2 + 1, height / 2 + 1],
  [width / 2 + 1, 0],
  [width / 2 + 1, -height / 2 - 1],
  [-width / 2 - 1, height / 2 + 1],
];

const label = (id: string, x: number, y: number, more: Partial<Label> = {}): Label => ({
  id,
  anchor: [x, y],
  width: 10,
  height: 4,
  places: spots(10, 4),
  priority: 0,
  ...more,
});
const boxOf = ([dx, dy]: PaperPoint, { anchor: [x, y], width, height }: Label): PaperBox => [
  x + dx - width / 2,
  y + dy - height / 2,
  x + dx + width / 2,
  y + dy + height / 2,
];
const overlap = (a: PaperBox, b: PaperBox) => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

function seat(labels: readonly Label[], more: Partial<SeatField<PaperPoint, Label>> = {}) {
  const field = { frame: null, signs: [], lines: [], ...more };
  return seatLabels<PaperPoint, Label>(labels, {
    ...field,
    shapeOf: (place, request) => ({ box: boxOf(place, request), quads: null }),
  });
}
const ids = (seated: ReturnType<typeof seat>) => [...seated.keys()].map(({ id }) => id);
const placeOf = (seated: ReturnType<typeof seat>, one: Label) => one.places.indexOf(seated.get(one)!.place);

describe('seatLabels', () => {
  it('takes the best free place', () => {
    const [a, b] = [label('a', 0, 0), label('b', 0, 0)];
    const seated = seat([a, b]);
    expect([placeOf(seated, a), placeOf(seated, b)]).toEqual([0, 2]);
    expect(seated.get(a)!.box).toEqual([1, 1, 11, 5]);
  });

  it('leaves the less important out where there is no room', () => {
    const only = { places: [[0, 0]] as const };
    const labels = [label('small', 0, 0, only), label('large', 3, 0, { ...only, priority: 5 })];
    expect(ids(seat(labels))).toEqual(['large']);
  });

  it('moves one label aside for another that has no other place', () => {
    const [free, tied] = [label('free', 0, 0, { priority: 5 }), label('tied', 0, 0, { places: [[6, 3]] })];
    const seated = seat([free, tied]);
    expect(ids(seated).sort()).toEqual(['free', 'tied']);
    expect(placeOf(seated, free)).toBeGreaterThan(0);
  });

  it('always keeps the pinned one, whatever is in the way', () => {
    const labels = [label('a', 0, 0, { priority: 9 }), label('chosen', 0, 0, { pinned: true, places: [[0, 0]] })];
    expect(ids(seat(labels, { signs: [[-20, -20, 20, 20]], frame: [100, 100, 200, 200] }))).toEqual(['chosen']);
  });

  it('keeps off signs and inside its frame', () => {
    const a = label('a', 0, 0);
    expect(placeOf(seat([a], { signs: [[0, 0, 3, 20]], frame: [-15, -15, 5, 15] }), a)).toBe(3);
  });

  it('leaves out labels of no place', () => {
    expect(seat([label('lost', Number.NaN, 0), label('none', 0, 0, { places: [] })]).size).toBe(0);
  });

  it('tells turned labels from the boxes round them', () => {
    const field: SeatField<PaperPoint, Label> = {
      frame: null,
      signs: [],
      lines: [],
      // Two slender strips along the same diagonal's sides: their boxes overlap, they do not.
      shapeOf: ([x, y]) => ({
        box: [x, y, x + 20, y + 20],
        quads: [
          [
            [x, y],
            [x + 20, y + 20],
            [x + 19, y + 20],
            [x, y + 1],
          ],
        ],
      }),
    };
    const labels = [label('a', 0, 0, { places: [[0, 0]] }), label('b', 0, 0, { places: [[4, 0]] })];
    expect(seatLabels<PaperPoint, Label>(labels, field).size).toBe(2);
  });

  it('never lets two overlap', () => {
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
          label(`${i}`, x, y, { width, height, priority, places: spots(width, height) }),
        );
        const sign: PaperBox = [-1000, 40, 1000, 45];
        const boxes = [...seat(labels, { signs: [sign] }).values()].map(({ box }) => box);
        for (const [i, box] of boxes.entries()) {
          expect(overlap(box, sign)).toBe(false);
          for (const other of boxes.slice(i + 1)) expect(overlap(box, other)).toBe(false);
        }
      }),
      { seed: 91 },
    );
  });
});
