import type { PaperBox, PaperPoint } from '../displayList.ts';
import { type MeasureText, textCorners } from '../words.ts';
import type { LabelPlace, LabelRequest } from './label.ts';
import { type Quad, quadBox } from './quads.ts';
import { type Shape, seatLabels } from './seats.ts';

/** Paper kept free around every label. */
const clearanceMm = 0.25;

export interface LabelField {
  /** Labels must lie inside. */
  readonly frame: PaperBox;
  /** Signs: no label may cover one. */
  readonly signs: readonly PaperBox[];
  /** Lines: a label avoids crossing them where it can. */
  readonly lines: readonly (readonly PaperPoint[])[];
  readonly measure: MeasureText;
}

export interface PlacedLabels {
  readonly placed: readonly LabelPlace[];
  /** Requests for which there was no place, in the order given. */
  readonly without: readonly LabelRequest[];
}

/** Labels as a sheet has them: turned along lines, in several lines of words, with leaders. See `seatLabels`. */
export function placeLabels(requests: readonly LabelRequest[], field: LabelField): PlacedLabels {
  const seated = seatLabels<LabelPlace, LabelRequest>(requests, {
    ...field,
    shapeOf: (place) => placeShape(place, field.measure),
    costOf: ({ cost }) => cost,
  });
  return {
    placed: requests.flatMap((request) => seated.get(request)?.place ?? []),
    without: requests.filter((request) => !seated.has(request)),
  };
}

/** What a label takes of the page, with its clearance. */
export function placeShape(place: LabelPlace, measure: MeasureText): Shape {
  const quads = placeQuads(place, measure);
  return { box: quadBox(quads.flat()), quads };
}

function placeQuads(place: LabelPlace, measure: MeasureText): Quad[] {
  const texts = place.texts.map((item) => grow(textCorners(item, measure)));
  return place.leader ? [...texts, leaderQuad(place.leader)] : texts;
}

/** A leader takes a narrow strip, so that nothing is written across it. */
function leaderQuad([from, to]: readonly [PaperPoint, PaperPoint]): Quad {
  const [ux, uy] = unitOf(from, to);
  const half = 0.15;
  const side = ([x, y]: PaperPoint, s: number): PaperPoint => [x - uy * half * s, y + ux * half * s];
  return [side(from, 1), side(to, 1), side(to, -1), side(from, -1)];
}

/** The corners moved out by the clearance, along the text's own directions. */
function grow(corners: readonly PaperPoint[]): Quad {
  const [a, b, , d] = corners as [PaperPoint, PaperPoint, PaperPoint, PaperPoint];
  const along = unitOf(a, b);
  const down = unitOf(a, d);
  const signs = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ] as const;
  return corners.map(([x, y], i): PaperPoint => {
    const [s, t] = signs[i]!;
    return [x + clearanceMm * (s * along[0] + t * down[0]), y + clearanceMm * (s * along[1] + t * down[1])];
  });
}

function unitOf(a: PaperPoint, b: PaperPoint): PaperPoint {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}
