import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PaperBox, PaperPoint } from '../../../core/drawing/displayList.ts';
import type { LabelRequest } from '../../../core/drawing/labels/label.ts';
import { labelBlock } from '../../../core/drawing/labels/labelBlock.ts';
import { placeLabels } from '../../../core/drawing/labels/placeLabels.ts';
import { placesAlongLine } from '../../../core/drawing/labels/placesAlong.ts';
import { placesAround } from '../../../core/drawing/labels/placesAround.ts';
import { fitsInside } from '../../../core/drawing/labels/placesInside.ts';
import { quadsMeet } from '../../../core/drawing/labels/quads.ts';
import { squareAround } from '../../../core/drawing/signs/sign.ts';
import { textCorners } from '../../../core/drawing/words.ts';
import { plainMeasure as measure } from '../sheets/plainMeasure.ts';

const frame: PaperBox = [0, 0, 120, 90];

function requestAt(point: PaperPoint, name: string, priority: number): LabelRequest {
  const block = labelBlock([{ font: 'regular', sizePt: 7, text: name }], measure);
  return { priority, places: placesAround(squareAround(point, 1), block), listedAs: name };
}

function corners(box: PaperBox): PaperPoint[] {
  return [
    [box[0], box[1]],
    [box[2], box[1]],
    [box[2], box[3]],
    [box[0], box[3]],
  ];
}

describe('placeLabels', () => {
  const spot = fc.tuple(
    fc.integer({ min: 2, max: 118 }),
    fc.integer({ min: 2, max: 88 }),
    fc.integer({ min: 1, max: 9 }),
  );

  it('never lets two labels, or a label and a sign, overlap; places or reports every request', () => {
    fc.assert(
      fc.property(fc.array(spot, { maxLength: 60 }), (spots) => {
        const requests = spots.map(([x, y, priority], i) => requestAt([x, y], `Gate ${i}`, priority));
        const signs = spots.map(([x, y]) => squareAround([x, y], 1));
        const { placed, without } = placeLabels(requests, { frame, signs, lines: [], measure });
        expect(placed.length + without.length).toBe(requests.length);
        const quads = placed.map(({ texts }) => textCorners(texts[0]!, measure));
        quads.forEach((quad, i) => {
          for (const other of quads.slice(i + 1)) expect(quadsMeet(quad, other)).toBe(false);
          for (const sign of signs) expect(quadsMeet(quad, corners(sign))).toBe(false);
          for (const [x, y] of quad) expect(x >= 0 && x <= 120 && y >= 0 && y <= 90).toBe(true);
        });
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  it('gives way by priority: of two for one place, the urgent one has it', () => {
    const one = requestAt([60, 45], 'low', 1);
    const two = requestAt([60, 45], 'high', 5);
    const first = (request: LabelRequest): LabelRequest => ({ ...request, places: request.places.slice(0, 1) });
    const { placed, without } = placeLabels([first(one), first(two)], { frame, signs: [], lines: [], measure });
    expect(placed.map(({ texts }) => texts[0]!.text)).toEqual(['high']);
    expect(without.map(({ listedAs }) => listedAs)).toEqual(['low']);
  });

  it('moves one label aside for another that has no other place', () => {
    const free = requestAt([60, 45], 'free', 5);
    const tied: LabelRequest = { ...requestAt([60, 45], 'tied', 1), places: free.places.slice(0, 1) };
    const { without } = placeLabels([free, tied], { frame, signs: [], lines: [], measure });
    expect(without).toEqual([]);
  });

  it('prefers a place where no line runs through', () => {
    const request = requestAt([60, 45], 'G1', 1);
    const east: PaperPoint[] = [
      [60, 45],
      [110, 45],
    ];
    const { placed } = placeLabels([request], { frame, signs: [], lines: [east], measure });
    expect(quadsMeet(textCorners(placed[0]!.texts[0]!, measure), east)).toBe(false);
  });

  it('leaves out what costs more than it is worth', () => {
    const request = { ...requestAt([60, 45], 'G1', 1), mostCost: -1 };
    expect(placeLabels([request], { frame, signs: [], lines: [], measure }).placed).toEqual([]);
  });
});

describe('placesAlongLine', () => {
  it('reads from left to right whichever way the line was drawn, and keeps off it', () => {
    const line: PaperPoint[] = [
      [100, 20],
      [10, 60],
    ];
    for (const path of [line, [...line].reverse()]) {
      const places = placesAlongLine([path], 'Boundary', { sizePt: 6 }, 1, measure);
      expect(places.length).toBeGreaterThan(0);
      for (const { texts } of places) {
        expect(Math.abs(texts[0]!.rotationDeg)).toBeLessThanOrEqual(90);
        expect(texts[0]!.rotationDeg).toBeCloseTo((Math.atan2(-40, 90) * 180) / Math.PI, 6);
        expect(quadsMeet(textCorners(texts[0]!, measure), path)).toBe(false);
      }
    }
  });

  it('has none on a line that is too short or bends too much', () => {
    const short: PaperPoint[] = [
      [0, 0],
      [3, 0],
    ];
    const bent: PaperPoint[] = [
      [0, 0],
      [6, 0],
      [6, 6],
    ];
    expect(placesAlongLine([short, bent], 'A long name', { sizePt: 6 }, 1, measure)).toEqual([]);
  });
});

describe('fitsInside', () => {
  it('keeps a name from running over into the neighbour', () => {
    const ring: PaperPoint[] = [
      [0, 0],
      [20, 0],
      [20, 10],
      [0, 10],
    ];
    expect(fitsInside([10, 5], 16, 6, ring)).toBe(true);
    expect(fitsInside([10, 1], 16, 6, ring)).toBe(false);
    expect(fitsInside([5, 5], 16, 6, ring)).toBe(false);
  });
});
