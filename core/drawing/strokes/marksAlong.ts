import type { PaperPoint } from '../displayList.ts';
import { paperDirection } from '../signs/sign.ts';

export interface MarkPlace {
  readonly at: PaperPoint;
  /** Direction of the path there, length 1. */
  readonly along: PaperPoint;
}

/** Places for marks along a path, about `spacingMm` apart and alike at both ends; none on a path under half a spacing. */
export function marksAlong(path: readonly PaperPoint[], spacingMm: number): MarkPlace[] {
  const lengthMm = paperLengthMm(path);
  const count = Math.round(lengthMm / spacingMm);
  if (count < 1) return [];
  const step = lengthMm / count;
  const places: MarkPlace[] = [];
  let walked = 0;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    const segmentMm = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const along = paperDirection(a, b);
    for (let next = (places.length + 0.5) * step; places.length < count && next <= walked + segmentMm; next += step) {
      places.push({ at: [a[0] + along[0] * (next - walked), a[1] + along[1] * (next - walked)], along });
    }
    walked += segmentMm;
  }
  return places;
}

/** Length of a path on paper, millimetres. */
export function paperLengthMm(path: readonly PaperPoint[]): number {
  let lengthMm = 0;
  for (let i = 1; i < path.length; i++) {
    lengthMm += Math.hypot(path[i]![0] - path[i - 1]![0], path[i]![1] - path[i - 1]![1]);
  }
  return lengthMm;
}
