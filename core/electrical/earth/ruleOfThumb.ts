import { message } from '../../words/message.ts';
import { type Basis, published } from '../basis.ts';

/** Rod in the ground for each joule of the energiser's output (3 ft). */
export const METRES_PER_JOULE = 0.9;

export const ruleOfThumbBasis: Basis = published(message('power.sources.ruleOfThumb'));

/** Rods stand over 3 m (10 ft) apart, by the same bulletin; and over 23 m (75 ft) from other grounds, water lines and utilities. */
export const BULLETIN_SPACING_M = 3;
export const BULLETIN_CLEARANCE_M = 23;

/** Rods by the rule of thumb: 0.9 m of rod per joule of output. */
export function rodsByRuleOfThumb(outputJ: number, rodLengthM: number): { rodInGroundM: number; rods: number } {
  const rodInGroundM = METRES_PER_JOULE * outputJ;
  // A little slack, so that 2 J on 1.8 m rods is one rod and not two by the last bit.
  return { rodInGroundM, rods: Math.max(1, Math.ceil(rodInGroundM / rodLengthM - 1e-9)) };
}
