import { largestOf } from '../../model/extremes.ts';
import { leftThing } from '../buriedThings.ts';
import type { LeftInGround } from './leftInGround.ts';

/**
 * What is drawn no longer lies within this of where it is shown; where it may lie in several places, this reaches from
 * the one that is shown over all others (`Certainty`). Metres.
 */
export function leftWithinM(left: LeftInGround): number {
  return left.crossing?.certainty.withinM ?? largestOf(leftThing(left).ways.map(({ withinM }) => withinM));
}
