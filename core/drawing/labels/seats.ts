import { createSpatialIndex } from '../../geometry/spatialIndex.ts';
import type { PaperBox, PaperPoint } from '../displayList.ts';
import { boxQuad, type Quad, quadBox, quadMeetsSegment, quadsMeet } from './quads.ts';
import { createSeatGrid, type SeatGrid } from './seatGrid.ts';

/** A label that wants a place. */
export interface SeatRequest<P> {
  /** Larger goes first; of equals, the earlier in the list. */
  readonly priority: number;
  /** The best first, where they cost nothing. */
  readonly places: readonly P[];
  /** Placed before all others and never left out: what the user has chosen. */
  readonly pinned?: boolean;
  /** A place that costs more than this is worse than none. */
  readonly mostCost?: number;
}

/** What of the drawing a label takes. */
export interface Shape {
  readonly box: PaperBox;
  /** The parts of it, where they are not the upright box itself. */
  readonly quads: readonly Quad[] | null;
}

export interface SeatField<P, R> {
  /** Labels must lie inside; null: anywhere. */
  readonly frame: PaperBox | null;
  /** Signs: no label may cover one. */
  readonly signs: readonly PaperBox[];
  /** Lines: a label avoids crossing them where it can. A crossed line costs 1. */
  readonly lines: readonly (readonly PaperPoint[])[];
  readonly shapeOf: (place: P, request: R) => Shape;
  /** What is lost by choosing a place over the best; left out, places are as good as they stand in the list. */
  readonly costOf?: (place: P) => number;
}

export interface Seat<P, R> extends Shape {
  readonly request: R;
  readonly place: P;
  readonly cost: number;
}

/**
 * Gives each label a place where it meets no other label and no sign, the important ones first, each at its cheapest
 * (the greedy way, as J. Christensen, J. Marks and S. Shieber describe in "An empirical study of algorithms for
 * point-feature label placement", ACM Transactions on Graphics 14, 1995). A label that finds none may move one less
 * urgent neighbour to another of that one's places. No two labels ever overlap in the result, but for pinned ones that
 * have no free place: they stand on their first, come what may.
 */
export function seatLabels<P, R extends SeatRequest<P>>(
  requests: readonly R[],
  field: SeatField<P, R>,
): ReadonlyMap<R, Seat<P, R>> {
  const { frame, signs, shapeOf, costOf } = field;
  const seated = new Map<R, Seat<P, R>>();
  const choices = new Map<R, readonly Seat<P, R>[]>();
  const byPriority = requests.toSorted(
    (a, b) => Number(b.pinned ?? false) - Number(a.pinned ?? false) || b.priority - a.priority,
  );
  const cell = cellSize(byPriority, shapeOf);
  const taken: SeatGrid<Seat<P, R>> = createSeatGrid(cell);
  const signGrid: SeatGrid<Shape> = createSeatGrid(cell);
  for (const box of signs) signGrid.add({ box, quads: null });
  const crossed = lineCounter(field.lines);
  // Without lines and costs the first free place is the best, and the others need no look.
  const inOrder = !costOf && field.lines.length === 0;

  const seatAt = (request: R, place: P): Seat<P, R> | null => {
    const { box, quads } = shapeOf(place, request);
    if (!box.every(Number.isFinite)) return null;
    const seat: Seat<P, R> = { request, place, box, quads, cost: costOf?.(place) ?? 0 };
    if ((frame && !isInside(box, frame)) || signGrid.some(box, (sign) => shapesMeet(seat, sign))) return null;
    return inOrder ? seat : { ...seat, cost: seat.cost + crossed(seat) };
  };

  /** All places of a label that no sign and no edge forbids, the cheapest first. */
  const seatsOf = (request: R): readonly Seat<P, R>[] => {
    const known = choices.get(request);
    if (known) return known;
    const most = request.mostCost ?? Infinity;
    const seats = request.places.flatMap((place) => seatAt(request, place) ?? []).filter(({ cost }) => cost <= most);
    if (!inOrder) seats.sort((a, b) => a.cost - b.cost);
    choices.set(request, seats);
    return seats;
  };

  const isFree = (seat: Seat<P, R>) => !taken.some(seat.box, (other) => shapesMeet(seat, other));

  function firstFree(request: R): Seat<P, R> | null {
    if (!inOrder) return seatsOf(request).find(isFree) ?? null;
    for (const place of request.places) {
      const seat = seatAt(request, place);
      if (seat && isFree(seat)) return seat;
    }
    return null;
  }

  function take(seat: Seat<P, R>): void {
    const old = seated.get(seat.request);
    if (old) taken.remove(old);
    seated.set(seat.request, seat);
    taken.add(seat);
  }

  /** The first seat that comes free when the one label in its way takes another place. */
  function moveOneAside(request: R): boolean {
    for (const seat of seatsOf(request)) {
      const blockers = taken.near(seat.box).filter((other) => shapesMeet(seat, other));
      const blocker = blockers[0];
      if (!blocker || blockers.length !== 1) continue;
      const other = seatsOf(blocker.request).find(
        (choice) =>
          !shapesMeet(choice, seat) &&
          !taken.some(choice.box, (third) => third !== blocker && shapesMeet(choice, third)),
      );
      if (!other) continue;
      take(other);
      take(seat);
      return true;
    }
    return false;
  }

  for (const request of byPriority) {
    const free = firstFree(request);
    if (free) take(free);
    else if (!moveOneAside(request) && request.pinned && request.places.length > 0) {
      const place = request.places[0]!;
      const shape = shapeOf(place, request);
      if (shape.box.every(Number.isFinite)) take({ ...shape, request, place, cost: 0 });
    }
  }
  return seated;
}

function shapesMeet(a: Shape, b: Shape): boolean {
  if (!insidesMeet(a.box, b.box)) return false;
  if (!a.quads && !b.quads) return true;
  const [ours, theirs] = [a.quads ?? [boxQuad(a.box)], b.quads ?? [boxQuad(b.box)]];
  return ours.some((p) => theirs.some((q) => quadsMeet(p, q)));
}

/** A shared edge is no overlap. */
function insidesMeet(a: PaperBox, b: PaperBox): boolean {
  return a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
}

function isInside(box: PaperBox, frame: PaperBox): boolean {
  return box[0] >= frame[0] && box[1] >= frame[1] && box[2] <= frame[2] && box[3] <= frame[3];
}

/** How many segments of some lines a label lies across. */
function lineCounter(lines: readonly (readonly PaperPoint[])[]): (shape: Shape) => number {
  if (lines.length === 0) return () => 0;
  const index = createSpatialIndex(lines.map((line, i) => [i, line] as const));
  return ({ box, quads }) => {
    let crossed = 0;
    for (const quad of quads ?? [boxQuad(box)]) {
      for (const { key, segment } of index.search(quadBox(quad))) {
        const line = lines[key]!;
        if (quadMeetsSegment(quad, line[segment]!, line[segment + 1] ?? line[segment]!)) crossed++;
      }
    }
    return crossed;
  };
}

/** Cells about as large as the labels: the mean of some of them. */
function cellSize<P, R extends SeatRequest<P>>(
  requests: readonly R[],
  shapeOf: (place: P, request: R) => Shape,
): number {
  const step = Math.max(1, Math.floor(requests.length / 64));
  const sizes: number[] = [];
  for (let i = 0; i < requests.length; i += step) {
    const request = requests[i]!;
    if (request.places.length === 0) continue;
    const [left, top, right, bottom] = shapeOf(request.places[0]!, request).box;
    const size = Math.max(right - left, bottom - top);
    if (size > 0 && size < Infinity) sizes.push(size);
  }
  return sizes.length === 0 ? 1 : sizes.reduce((sum, size) => sum + size, 0) / sizes.length;
}
