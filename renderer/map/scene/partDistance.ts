import { nearestOnPolyline } from '../../../core/geometry/polyline.ts';
import { pointInRing } from '../../../core/geometry/ring.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';
import { leastOf } from '../../../core/model/extremes.ts';
import type { Part } from './parts.ts';
import { switchSignXy } from './switchSignXy.ts';

/** How far a point is from what a part draws at this scale, metres; 0 inside an area. */
export function partDistanceM(part: Part, at: Xy, pxPerM: number): number {
  switch (part.kind) {
    case 'piece':
    case 'leadOut':
      return pathDistanceM(part.xy, at);
    case 'service':
      return isArea(part.xy) && pointInRing(at, part.xy) ? 0 : pathDistanceM(part.xy, at);
    case 'inGround':
      return leastOf(part.left.ways.map((way) => pathDistanceM(way, at)));
    case 'crossing':
      return pathDistanceM(part.figures.path, at);
    case 'gateway':
      return pathDistanceM([part.shape.startPost, part.shape.endPost], at);
    case 'switch':
      return xyDistanceM(switchSignXy(part, pxPerM), at);
    case 'paddock':
      return pointInRing(at, part.paddock.ring) && !part.paddock.holes.some((hole) => pointInRing(at, hole))
        ? 0
        : Infinity;
    default:
      return xyDistanceM(part.xy, at);
  }
}

const pathDistanceM = (path: readonly Xy[], at: Xy) => nearestOnPolyline(at, path)?.distanceM ?? Infinity;

/** A closed path of at least three corners. */
export function isArea(path: readonly Xy[]): boolean {
  const first = path[0];
  const last = path.at(-1);
  return path.length > 3 && first !== undefined && last !== undefined && xyDistanceM(first, last) < 0.01;
}
