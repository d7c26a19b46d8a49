import { createSpatialIndex } from '../../geometry/spatialIndex.ts';
import type { PaperBox, PaperPoint } from '../displayList.ts';
import { type MeasureText, textCorners } from '../words.ts';
import type { LabelPlace, LabelRequest } from './label.ts';
import { type Quad, quadBox, quadMeetsSegment, quadsMeet } from './quads.ts';

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

interface Seat {
  readonly request: LabelRequest;
  readonly place: LabelPlace;
  readonly quads: readonly Quad[];
}

/**
 * Gives each label a place where it meets no other label and no sign, the important ones first, each at its cheapest.
 * A label that finds none may move one less urgent neighbour to another of that one's places. No two labels ever
 * overlap in the result.
 */
export function placeLabels(requests: readonly LabelRequest[], field: LabelField): PlacedLabels {
  const signs = createSpatialIndex(field.signs.map((sign, i) => [i, boxOutline(sign)] as const));
  const lines = createSpatialIndex(field.lines.map((line, i) => [i, line] as const));
  const seated = new Map<LabelRequest, Seat>();
  const seats = new SeatGrid();

  const seatsFor = (request: LabelRequest): Seat[] =>
    request.places
      .map((place) => ({ request, place, quads: placeQuads(place, field.measure) }))
      .filter(({ quads }) => quads.every((quad) => inFrame(quad, field.frame) && !coversSign(quad)))
      .map((seat) => ({ ...seat, place: { ...seat.place, cost: seat.place.cost + linesCrossed(seat.quads) } }))
      .filter(({ place }) => place.cost <= (request.mostCost ?? Infinity))
      .sort((a, b) => a.place.cost - b.place.cost);

  function coversSign(quad: Quad): boolean {
    const candidates = new Set(signs.search(quadBox(quad)).map(({ key }) => key));
    return [...candidates].some((i) => quadsMeet(quad, boxQuad(field.signs[i]!)));
  }

  function linesCrossed(quads: readonly Quad[]): number {
    let crossed = 0;
    for (const quad of quads) {
      for (const { key, segment } of lines.search(quadBox(quad))) {
        const line = field.lines[key]!;
        if (quadMeetsSegment(quad, line[segment]!, line[segment + 1] ?? line[segment]!)) crossed++;
      }
    }
    return crossed;
  }

  function take(seat: Seat): void {
    const old = seated.get(seat.request);
    if (old) seats.remove(old);
    seated.set(seat.request, seat);
    seats.add(seat);
  }

  const byPriority = requests
    .map((request, i) => ({ request, i }))
    .sort((a, b) => b.request.priority - a.request.priority || a.i - b.i);
  const choices = new Map<LabelRequest, Seat[]>();
  for (const { request } of byPriority) {
    const possible = seatsFor(request);
    choices.set(request, possible);
    const free = possible.find((seat) => seats.blockers(seat).length === 0);
    if (free) take(free);
    else moveOneAside(possible);
  }

  /** The first of these seats that comes free when the one label in its way takes another place. */
  function moveOneAside(possible: readonly Seat[]): void {
    for (const seat of possible) {
      const blockers = seats.blockers(seat);
      if (blockers.length !== 1) continue;
      const blocker = blockers[0]!;
      const other = choices
        .get(blocker.request)!
        .find((choice) => !anyQuadsMeet(choice.quads, seat.quads) && seats.blockers(choice, blocker).length === 0);
      if (!other) continue;
      take(other);
      take(seat);
      return;
    }
  }

  return {
    placed: requests.flatMap((request) => seated.get(request)?.place ?? []),
    without: requests.filter((request) => !seated.has(request)),
  };
}

/** Taken places, filed by squares of the page. */
class SeatGrid {
  readonly #squares = new Map<string, Set<Seat>>();

  add(seat: Seat): void {
    for (const key of squaresOf(seat)) {
      const square = this.#squares.get(key) ?? new Set();
      square.add(seat);
      this.#squares.set(key, square);
    }
  }

  remove(seat: Seat): void {
    for (const key of squaresOf(seat)) this.#squares.get(key)?.delete(seat);
  }

  /** Taken places that a seat would meet, `except` aside. */
  blockers(seat: Seat, except: Seat | null = null): Seat[] {
    const near = new Set<Seat>();
    for (const key of squaresOf(seat)) for (const other of this.#squares.get(key) ?? []) near.add(other);
    return [...near].filter((other) => other !== except && anyQuadsMeet(seat.quads, other.quads));
  }
}

const squareMm = 12;

function squaresOf(seat: Seat): Set<string> {
  const keys = new Set<string>();
  for (const quad of seat.quads) {
    const [left, top, right, bottom] = quadBox(quad);
    for (let i = Math.floor(left / squareMm); i <= Math.floor(right / squareMm); i++) {
      for (let k = Math.floor(top / squareMm); k <= Math.floor(bottom / squareMm); k++) keys.add(`${i},${k}`);
    }
  }
  return keys;
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

function inFrame(quad: Quad, [left, top, right, bottom]: PaperBox): boolean {
  return quad.every(([x, y]) => x >= left && x <= right && y >= top && y <= bottom);
}

function anyQuadsMeet(a: readonly Quad[], b: readonly Quad[]): boolean {
  return a.some((p) => b.some((q) => quadsMeet(p, q)));
}

function boxQuad([left, top, right, bottom]: PaperBox): Quad {
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}

function boxOutline(box: PaperBox): PaperPoint[] {
  return [
    [box[0], box[1]],
    [box[2], box[3]],
  ];
}
