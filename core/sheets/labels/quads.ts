import type { PaperBox, PaperPoint } from '../displayList.ts';

/** A convex four-cornered shape, corners in order. */
export type Quad = readonly PaperPoint[];

export function quadBox(quad: Quad): PaperBox {
  const xs = quad.map(([x]) => x);
  const ys = quad.map(([, y]) => y);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

/** Whether two convex shapes share more than a border, by the separating axis theorem (any book on collision tests). */
export function quadsMeet(a: Quad, b: Quad): boolean {
  return !separated(a, b) && !separated(b, a);
}

export function quadMeetsSegment(quad: Quad, from: PaperPoint, to: PaperPoint): boolean {
  const segment = [from, to];
  return !separated(quad, segment) && !separated(segment, quad);
}

/** Whether some side of `a` has all of `b` beyond it. */
function separated(a: Quad, b: Quad): boolean {
  return a.some(([x, y], i) => {
    const [nextX, nextY] = a[(i + 1) % a.length]!;
    const [nx, ny] = [nextY - y, x - nextX];
    const along = ([px, py]: PaperPoint) => nx * px + ny * py;
    const spanA = a.map(along);
    const spanB = b.map(along);
    return Math.max(...spanA) <= Math.min(...spanB) || Math.max(...spanB) <= Math.min(...spanA);
  });
}
