import { boxDistanceM } from '../../geometry/box.ts';
import { nearestOnSegment } from '../../geometry/polyline.ts';
import type { Xy } from '../../geometry/types.ts';
import { between, xyDistanceM } from '../../geometry/vector.ts';
import { keptForPair } from './pairCache.ts';
import { segmentBox, segmentsNear } from './segmentIndex.ts';

/** A stretch of a path, by distance along it in the plane. */
export interface ZoneStretch {
  readonly fromM: number;
  readonly toM: number;
}

/** How finely a path is walked. */
const stepM = 2;

/** The stretches of a path that stay within a distance of another, to about 2 m (found by walking it). */
export const stretchesWithin = keptForPair(walk);

function walk(path: readonly Xy[], other: readonly Xy[], withinM: number): readonly ZoneStretch[] {
  const stretches: ZoneStretch[] = [];
  let beganM: number | null = null;
  let startM = 0;
  for (let i = 0; i + 1 < path.length; i++) {
    const [a, b] = [path[i]!, path[i + 1]!];
    const lengthM = xyDistanceM(a, b);
    const near = segmentsWithin(a, b, other, withinM);
    const steps = near.length === 0 ? 1 : Math.max(1, Math.ceil(lengthM / stepM));
    for (let step = 0; step < steps; step++) {
      const inside = near.length > 0 && isWithin(between(a, b, (step + 0.5) / steps), near, withinM);
      const hereM = startM + (lengthM * step) / steps;
      if (inside) beganM ??= hereM;
      else if (beganM !== null) {
        stretches.push({ fromM: beganM, toM: hereM });
        beganM = null;
      }
    }
    startM += lengthM;
  }
  if (beganM !== null) stretches.push({ fromM: beganM, toM: startM });
  return stretches;
}

type Segment = readonly [Xy, Xy];

function segmentsWithin(a: Xy, b: Xy, other: readonly Xy[], withinM: number): Segment[] {
  return segmentsNear(other, segmentBox(a, b, withinM)).map((i) => [other[i]!, other[i + 1] ?? other[i]!]);
}

function isWithin(point: Xy, segments: readonly Segment[], withinM: number): boolean {
  return segments.some(([c, d]) => {
    return boxDistanceM(point, segmentBox(c, d)) <= withinM && nearestOnSegment(point, c, d).distanceM <= withinM;
  });
}
