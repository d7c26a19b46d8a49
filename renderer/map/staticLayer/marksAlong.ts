import type { Px } from '../plane/view.ts';

export interface MarkPlace {
  readonly x: number;
  readonly y: number;
  /** Direction of the path there: radians from the x axis towards the y axis. */
  readonly angle: number;
}

/** Places along a path for marks that repeat every `spacingPx`, spread evenly so that both ends look alike; none on a path shorter than half a spacing. */
export function marksAlong(path: readonly Px[], spacingPx: number): MarkPlace[] {
  const lengthPx = pathLengthPx(path);
  const count = Math.round(lengthPx / spacingPx);
  if (count < 1) return [];
  const step = lengthPx / count;
  const places: MarkPlace[] = [];
  let next = step / 2;
  let walked = 0;
  for (let i = 1; i < path.length; i++) {
    const [ax, ay] = path[i - 1]!;
    const [bx, by] = path[i]!;
    const segmentPx = Math.hypot(bx - ax, by - ay);
    const angle = Math.atan2(by - ay, bx - ax);
    while (places.length < count && next <= walked + segmentPx && segmentPx > 0) {
      const share = (next - walked) / segmentPx;
      places.push({ x: ax + (bx - ax) * share, y: ay + (by - ay) * share, angle });
      next += step;
    }
    walked += segmentPx;
  }
  return places;
}

export function pathLengthPx(path: readonly Px[]): number {
  let lengthPx = 0;
  for (let i = 1; i < path.length; i++) {
    lengthPx += Math.hypot(path[i]![0] - path[i - 1]![0], path[i]![1] - path[i - 1]![1]);
  }
  return lengthPx;
}
