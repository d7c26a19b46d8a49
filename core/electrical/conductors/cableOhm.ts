/**
 * Resistance of a crossing's or lead-out's cable with its joints (ohm). A sound clamp or cut-out switch is taken as no
 * resistance at all (assumption: it is milliohms against tens of ohms of wire); a rusty one is whatever was measured.
 */
export function cableOhm(cable: {
  readonly lengthM: number;
  readonly ohmPerKm: number;
  readonly joints?: number;
  readonly ohmPerJoint?: number;
}): number {
  const { lengthM, ohmPerKm, joints = 2, ohmPerJoint = 0 } = cable;
  return (lengthM / 1000) * ohmPerKm + joints * ohmPerJoint;
}
