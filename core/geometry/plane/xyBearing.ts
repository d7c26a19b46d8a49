import type { Xy } from '../types.ts';

const degreesPerRadian = 180 / Math.PI;

/** Bearing in the working plane: degrees clockwise from grid north, 0 <= b < 360; 0 where the points coincide. */
export function xyBearingDeg(from: Xy, to: Xy): number {
  const degrees = Math.atan2(to[0] - from[0], to[1] - from[1]) * degreesPerRadian;
  const turned = degrees < 0 ? degrees + 360 : degrees;
  return turned === 360 ? 0 : turned + 0;
}
