/** Bearings that the Shift key holds a segment to: every 15 degrees from north, and from the segment before. */
export const constrainStepDeg = 15;

/** The held bearing nearest to `bearingDeg`; `beforeDeg` is the bearing of the segment before, or null. */
export function constrainBearing(bearingDeg: number, beforeDeg: number | null): number {
  const fromNorth = nearestStep(bearingDeg, 0);
  if (beforeDeg === null) return fromNorth;
  const fromBefore = nearestStep(bearingDeg, beforeDeg);
  return offDeg(bearingDeg, fromBefore) < offDeg(bearingDeg, fromNorth) ? fromBefore : fromNorth;
}

function nearestStep(bearingDeg: number, fromDeg: number): number {
  const steps = Math.round((bearingDeg - fromDeg) / constrainStepDeg);
  return (((fromDeg + steps * constrainStepDeg) % 360) + 360) % 360;
}

function offDeg(a: number, b: number): number {
  const off = Math.abs(a - b) % 360;
  return Math.min(off, 360 - off);
}

/** How far a point goes along a bearing: its own distance times the cosine of what it is off by, never backwards. */
export function lengthAlong(lengthM: number, bearingDeg: number, heldDeg: number): number {
  return Math.max(0, lengthM * Math.cos(((bearingDeg - heldDeg) * Math.PI) / 180));
}
