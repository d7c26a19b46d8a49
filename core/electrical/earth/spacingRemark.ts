import { type Message, message } from '../../words/message.ts';
import { BULLETIN_SPACING_M } from './ruleOfThumb.ts';

/** One rod length apart, give or take this share, is what the factors hold for. */
const TOLERANCE = 0.1;

/** What a field's spacing does to its estimate, in a sentence; `null` where it is as the factors take it and as the bulletin asks. */
export function spacingRemark(rods: number, rodLengthM: number, spacingM: number): Message | null {
  if (rods < 2) return null;
  if (spacingM < rodLengthM * (1 - TOLERANCE)) return message('power.earth.spacing.closer', { spacingM, rodLengthM });
  if (spacingM <= BULLETIN_SPACING_M) {
    return message('power.earth.spacing.fits', { spacingM, askedM: BULLETIN_SPACING_M });
  }
  if (spacingM > rodLengthM * (1 + TOLERANCE)) return message('power.earth.spacing.further', { spacingM, rodLengthM });
  return null;
}
