import { booleanPointInPolygon } from '@turf/turf';
import { keptFor } from '../model/memo.ts';
import { boxAround } from './box.ts';
import type { Xy } from './types.ts';

/** Whether a point lies inside a ring or on it. The last vertex may repeat the first or not; the array is never changed. */
export function pointInRing(point: Xy, ring: readonly Xy[]): boolean {
  return ring.length > 2 && booleanPointInPolygon([point[0], point[1]], polygonOf(ring));
}

/** The ring as Turf takes it: its last vertex is its first. */
const polygonOf = keptFor((ring: readonly Xy[]) => {
  const [first, last] = [ring[0]!, ring.at(-1)!];
  const isClosed = first[0] === last[0] && first[1] === last[1];
  return { type: 'Polygon' as const, coordinates: [(isClosed ? ring : [...ring, first]) as [number, number][]] };
});

/**
 * Area of a plane ring, square metres, positive when it runs anticlockwise. The last vertex may repeat the first or
 * not. Tells which way a ring runs and which of two is larger; areas for people come from `geodesic.ts`.
 */
export function signedRingArea(ring: readonly Xy[]): number {
  const origin = ring[0];
  if (!origin) return 0;
  let twice = 0;
  let [px, py] = [0, 0];
  for (let i = 1; i < ring.length; i++) {
    const x = ring[i]![0] - origin[0];
    const y = ring[i]![1] - origin[1];
    twice += px * y - x * py;
    [px, py] = [x, y];
  }
  return twice / 2;
}

interface Cell {
  readonly at: Xy;
  readonly halfSize: number;
  /** Distance from the middle to the boundary, negative outside. */
  readonly depthM: number;
  /** The most that any point of the cell can have. */
  readonly bestM: number;
}

/**
 * The point of a piece of land furthest from its boundary, to within `toleranceM`: where a name or a mark stands best.
 * D. Garcia-Castellanos and U. Lombardo, "Poles of inaccessibility", Scottish Geographical Journal 123, 2007; found by
 * splitting the most promising square of a grid in four until none can be better. Null for a ring without area.
 */
export function interiorPoint(
  shell: readonly Xy[],
  holes: readonly (readonly Xy[])[] = [],
  toleranceM = 1,
): { readonly point: Xy; readonly depthM: number } | null {
  const box = boxAround(shell);
  if (!box) return null;
  const [minX, minY, maxX, maxY] = box;
  const size = Math.min(maxX - minX, maxY - minY);
  if (!(size > 0)) return null;
  const rings = [shell, ...holes];
  const cell = (at: Xy, halfSize: number): Cell => {
    const depthM = signedDepth(at, rings);
    return { at, halfSize, depthM, bestM: depthM + halfSize * Math.SQRT2 };
  };
  const step = Math.max(size, (maxX - minX) / 64, (maxY - minY) / 64);
  let best = cell([(minX + maxX) / 2, (minY + maxY) / 2], 0);
  let open: Cell[] = [];
  for (let x = minX; x < maxX; x += step) {
    for (let y = minY; y < maxY; y += step) open.push(cell([x + step / 2, y + step / 2], step / 2));
  }
  const worthwhileM = Math.max(toleranceM, size * 1e-6);
  while (open.length > 0) {
    // A little deeper is no reason to go from the middle, as in a strip.
    for (const candidate of open) if (candidate.depthM > best.depthM + worthwhileM / 4) best = candidate;
    const limit = best.depthM + (worthwhileM * 3) / 4;
    open = open
      .filter(({ bestM }) => bestM > limit)
      .flatMap(({ at: [x, y], halfSize }) => {
        const h = halfSize / 2;
        return [cell([x - h, y - h], h), cell([x + h, y - h], h), cell([x - h, y + h], h), cell([x + h, y + h], h)];
      });
  }
  return best.depthM > 0 ? { point: best.at, depthM: best.depthM } : null;
}

/** Distance to the boundary, negative outside of the land. The innermost loop of the search: it makes no objects. */
function signedDepth(at: Xy, rings: readonly (readonly Xy[])[]): number {
  let least = Infinity;
  let inside = false;
  for (const ring of rings) {
    if (pointInRing(at, ring)) inside = !inside;
    let from = ring.at(-1)!;
    for (const to of ring) {
      least = Math.min(least, squareToSegment(at, from, to));
      from = to;
    }
  }
  return Math.sqrt(least) * (inside ? 1 : -1);
}

/** The square of the distance from a point to a segment. */
function squareToSegment([x, y]: Xy, [ax, ay]: Xy, [bx, by]: Xy): number {
  const [dx, dy] = [bx - ax, by - ay];
  const along = dx * (x - ax) + dy * (y - ay);
  const square = dx * dx + dy * dy;
  const fraction = along <= 0 ? 0 : along >= square ? 1 : along / square;
  const [east, north] = [x - ax - fraction * dx, y - ay - fraction * dy];
  return east * east + north * north;
}
