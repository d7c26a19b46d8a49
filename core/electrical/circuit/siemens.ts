/** Less resistance than this is none at all: even a 10 kA pulse would drop a hundred millionth of a volt over it. */
const PERFECT_BELOW_OHM = 1e-12;

/** Conductance of a resistance; `Infinity` (a perfect joint, a dead short) below a picoohm, 0 for `Infinity` ohm. */
export function siemens(ohm: number): number {
  return ohm < PERFECT_BELOW_OHM ? Infinity : 1 / ohm;
}
