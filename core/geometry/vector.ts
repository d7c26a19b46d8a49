import type { Xy } from './types.ts';

/** Vector arithmetic on points of the working plane. */

export const add = (a: Xy, b: Xy): Xy => [a[0] + b[0], a[1] + b[1]];

export const subtract = (a: Xy, b: Xy): Xy => [a[0] - b[0], a[1] - b[1]];

export const scale = (a: Xy, factor: number): Xy => [a[0] * factor, a[1] * factor];

export const dot = (a: Xy, b: Xy): number => a[0] * b[0] + a[1] * b[1];

/** Positive when `b` lies to the left of `a`. */
export const cross = (a: Xy, b: Xy): number => a[0] * b[1] - a[1] * b[0];

/** A quarter turn to the left. */
export const turnLeft = (a: Xy): Xy => [-a[1], a[0]];

/** The point a given fraction of the way from `a` to `b`; exactly `a` at 0 and `b` at 1. */
export const between = (a: Xy, b: Xy, fraction: number): Xy =>
  fraction === 1 ? b : [a[0] + (b[0] - a[0]) * fraction, a[1] + (b[1] - a[1]) * fraction];

/** Direction of `a` with length 1; `[0, 0]` for a vector without length. */
export function unit(a: Xy): Xy {
  const length = Math.hypot(a[0], a[1]);
  return length === 0 ? [0, 0] : [a[0] / length, a[1] / length];
}

/** Straight distance in the working plane, metres. For snapping and drawing; lengths for people come from `geodesic.ts`. */
export function xyDistanceM(a: Xy, b: Xy): number {
  const east = b[0] - a[0];
  const north = b[1] - a[1];
  return Math.sqrt(east * east + north * north);
}

const degreesPerRadian = 180 / Math.PI;

/** Bearing in the working plane: degrees clockwise from grid north, 0 <= b < 360; 0 where the points coincide. */
export function xyBearingDeg(from: Xy, to: Xy): number {
  const degrees = Math.atan2(to[0] - from[0], to[1] - from[1]) * degreesPerRadian;
  const turned = degrees < 0 ? degrees + 360 : degrees;
  return turned === 360 ? 0 : turned + 0;
}

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
