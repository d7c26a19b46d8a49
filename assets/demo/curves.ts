import { segmentIntersection } from '../../core/geometry/segments.ts';
import type { Xy } from '../../core/geometry/types.ts';
import { xyDistanceM } from '../../core/geometry/vector.ts';

/** A smooth curve through some points (a Catmull-Rom spline), sampled about every `stepM` metres. */
export function curveThrough(points: readonly Xy[], stepM: number): Xy[] {
  const curve: Xy[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const [p0, p1, p2, p3] = [points[i - 1] ?? points[i]!, points[i]!, points[i + 1]!, points[i + 2] ?? points[i + 1]!];
    const steps = Math.max(1, Math.round(xyDistanceM(p1, p2) / stepM));
    for (let step = 0; step < steps; step++) curve.push(blend(p0, p1, p2, p3, step / steps));
  }
  return [...curve, points.at(-1)!];
}

function blend(p0: Xy, p1: Xy, p2: Xy, p3: Xy, t: number): Xy {
  const along = (k: 0 | 1) =>
    0.5 *
    (2 * p1[k] +
      (p2[k] - p0[k]) * t +
      (2 * p0[k] - 5 * p1[k] + 4 * p2[k] - p3[k]) * t ** 2 +
      (3 * p1[k] - p0[k] - 3 * p2[k] + p3[k]) * t ** 3);
  return [along(0), along(1)];
}

/** One path up to where it first meets another, then the other onward from there. */
export function turnOnto(first: readonly Xy[], second: readonly Xy[]): Xy[] {
  const { point, i, j } = meetingOf(first, second);
  return [...first.slice(0, i + 1), point, ...second.slice(j + 1)];
}

/** The second path from where the first one meets it. */
export function afterMeeting(first: readonly Xy[], second: readonly Xy[]): Xy[] {
  const { point, j } = meetingOf(first, second);
  return [point, ...second.slice(j + 1)];
}

function meetingOf(first: readonly Xy[], second: readonly Xy[]): { point: Xy; i: number; j: number } {
  for (let i = 0; i + 1 < first.length; i++) {
    for (let j = 0; j + 1 < second.length; j++) {
      const meeting = segmentIntersection(first[i]!, first[i + 1]!, second[j]!, second[j + 1]!);
      if (meeting.kind === 'cross') return { point: meeting.point, i, j };
    }
  }
  throw new Error('The two paths do not meet.');
}
