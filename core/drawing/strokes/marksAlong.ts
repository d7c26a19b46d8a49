import type { PaperPoint } from '../displayList.ts';
import { paperDirection } from '../signs/sign.ts';

export interface MarkPlace {
  readonly at: PaperPoint;
  /** Direction of the path there, length 1. */
  readonly along: PaperPoint;
}

/** Places for marks along a path, about `spacing` apart and alike at both ends; none on a path under half a spacing. */
export function marksAlong(path: readonly PaperPoint[], spacing: number): MarkPlace[] {
  const length = pathLength(path);
  const count = Math.round(length / spacing);
  if (count < 1) return [];
  const step = length / count;
  const places: MarkPlace[] = [];
  let walked = 0;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    const segment = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const along = paperDirection(a, b);
    for (let next = (places.length + 0.5) * step; places.length < count && next <= walked + segment; next += step) {
      places.push({ at: [a[0] + along[0] * (next - walked), a[1] + along[1] * (next - walked)], along });
    }
    walked += segment;
  }
  return places;
}

/** Length of a path in the drawing. */
export function pathLength(path: readonly PaperPoint[]): number {
  let length = 0;
  for (let i = 1; i < path.length; i++) {
    length += Math.hypot(path[i]![0] - path[i - 1]![0], path[i]![1] - path[i - 1]![1]);
  }
  return length;
}
