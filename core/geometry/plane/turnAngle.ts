import type { Xy } from '../types.ts';
import { cross, dot, subtract } from './vector.ts';

const degreesPerRadian = 180 / Math.PI;

/**
 * How far a path turns at `vertex` on its way from `before` to `after`: degrees in (-180, 180], 0 straight on,
 * positive to the left, 180 back the way it came. 0 where either leg has no length.
 */
export function turnAngleDeg(before: Xy, vertex: Xy, after: Xy): number {
  const arriving = subtract(vertex, before);
  const leaving = subtract(after, vertex);
  const degrees = Math.atan2(cross(arriving, leaving), dot(arriving, leaving)) * degreesPerRadian;
  return degrees === -180 ? 180 : degrees + 0;
}
