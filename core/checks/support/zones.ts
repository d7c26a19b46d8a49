import { boxAround, boxDistanceM } from '../../geometry/plane/box.ts';
import { nearestOnSegment } from '../../geometry/plane/nearestOnSegment.ts';
import { between } from '../../geometry/plane/vector.ts';
import { xyDistanceM } from '../../geometry/plane/xyDistance.ts';
import type { Xy } from '../../geometry/types.ts';

/** A stretch of a path, by distance along it in the plane. */
export interface ZoneStretch {
  readonly fromM: number;
  readonly toM: number;
}

const kept = new WeakMap<readonly Xy[], WeakMap<readonly Xy[], Map<number, readonly ZoneStretch[]>>>();

/** How finely a path is walked. */
const stepM = 2;

/**
 * The stretches of `path` that stay within `withinM` of `other`, to about 2 m (found by walking it). Kept with the two
 * paths, so that after an edit only what moved is walked again.
 */
export function stretchesWithin(path: readonly Xy[], other: readonly Xy[], withinM: number): readonly ZoneStretch[] {
  const ofPath = kept.get(path) ?? new WeakMap<readonly Xy[], Map<number, readonly ZoneStretch[]>>();
  kept.set(path, ofPath);
  const ofPair = ofPath.get(other) ?? new Map<number, readonly ZoneStretch[]>();
  ofPath.set(other, ofPair);
  let stretches = ofPair.get(withinM);
  if (!stretches) {
    stretches = walk(path, other, withinM);
    ofPair.set(withinM, stretches);
  }
  return stretches;
}

function walk(path: readonly Xy[], other: readonly Xy[], withinM: number): ZoneStretch[] {
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
  const [ax, ay, bx, by] = boxAround([a, b])!;
  const segments: Segment[] = [];
  for (let i = 0; i < Math.max(1, other.length - 1); i++) {
    const [c, d] = [other[i]!, other[i + 1] ?? other[i]!];
    const apart =
      Math.max(c[0], d[0]) < ax - withinM ||
      Math.min(c[0], d[0]) > bx + withinM ||
      Math.max(c[1], d[1]) < ay - withinM ||
      Math.min(c[1], d[1]) > by + withinM;
    if (!apart) segments.push([c, d]);
  }
  return segments;
}

function isWithin(point: Xy, segments: readonly Segment[], withinM: number): boolean {
  return segments.some(([c, d]) => {
    const box = [Math.min(c[0], d[0]), Math.min(c[1], d[1]), Math.max(c[0], d[0]), Math.max(c[1], d[1])] as const;
    return boxDistanceM(point, box) <= withinM && nearestOnSegment(point, c, d).distanceM <= withinM;
  });
}
