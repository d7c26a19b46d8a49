import type { PaperBox, PaperPoint } from '../displayList.ts';

/** A convex four-cornered shape, corners in order. */
export type Quad = readonly PaperPoint[];

export function quadBox(quad: Quad): PaperBox {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of quad) {
    left = Math.min(left, x);
    top = Math.min(top, y);
    right = Math.max(right, x);
    bottom = Math.max(bottom, y);
  }
  return [left, top, right, bottom];
}

/** Whether two convex shapes share more than a border, by the separating axis theorem (any book on collision tests). */
export function quadsMeet(a: Quad, b: Quad): boolean {
  return !separated(a, b) && !separated(b, a);
}

export function quadMeetsSegment(quad: Quad, from: PaperPoint, to: PaperPoint): boolean {
  const segment = [from, to];
  return !separated(quad, segment) && !separated(segment, quad);
}

/** Whether some side of `a` has all of `b` beyond it. Runs for every pair of neighbours on a sheet: no arrays are made. */
function separated(a: Quad, b: Quad): boolean {
  for (let i = 0; i < a.length; i++) {
    const [x, y] = a[i]!;
    const [nextX, nextY] = a[i + 1 === a.length ? 0 : i + 1]!;
    const [nx, ny] = [nextY - y, x - nextX];
    if (highest(a, nx, ny) <= -highest(b, -nx, -ny) || highest(b, nx, ny) <= -highest(a, -nx, -ny)) return true;
  }
  return false;
}

/** How far a shape reaches along a direction. */
function highest(quad: Quad, nx: number, ny: number): number {
  let most = -Infinity;
  for (const point of quad) most = Math.max(most, point[0] * nx + point[1] * ny);
  return most;
}

export function boxQuad([left, top, right, bottom]: PaperBox): Quad {
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}
