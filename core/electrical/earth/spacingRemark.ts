import { formatAtLeast, formatTape, type Units } from '../../words/numbers/write.ts';
import { BULLETIN_SPACING_M } from './ruleOfThumb.ts';

/** One rod length apart, give or take this share, is what the factors hold for. */
const TOLERANCE = 0.1;

/** What a field's spacing does to its estimate, in a sentence; `null` where it is as the factors take it and as the bulletin asks. */
export function spacingRemark(rods: number, rodLengthM: number, spacingM: number, units: Units): string | null {
  if (rods < 2) return null;
  const apart = `Rods ${formatTape(spacingM, units)} apart`;
  const length = formatTape(rodLengthM, units);
  if (spacingM < rodLengthM * (1 - TOLERANCE)) {
    return `${apart} are closer than their length (${length}): they share the same soil, and the resistance is higher than estimated.`;
  }
  if (spacingM <= BULLETIN_SPACING_M) {
    return `${apart} fit the estimate; the published rule of thumb asks for over ${formatAtLeast(BULLETIN_SPACING_M, units)}.`;
  }
  if (spacingM > rodLengthM * (1 + TOLERANCE)) {
    return `${apart} are further than their length (${length}): the resistance is no higher than estimated.`;
  }
  return null;
}
