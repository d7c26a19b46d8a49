import type { Xy } from '../types.ts';

const radiansPerDegree = Math.PI / 180;

/** The point `lengthM` metres from `from` at a bearing of the plane (degrees clockwise from grid north). */
export function xyDestination(from: Xy, bearingDeg: number, lengthM: number): Xy {
  const bearing = bearingDeg * radiansPerDegree;
  return [from[0] + lengthM * Math.sin(bearing), from[1] + lengthM * Math.cos(bearing)];
}
