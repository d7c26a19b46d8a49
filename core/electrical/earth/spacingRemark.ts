import { BULLETIN_SPACING_M } from './ruleOfThumb.ts';

/** One rod length apart, give or take this share, is what the factors hold for. */
const TOLERANCE = 0.1;

/** What a field's spacing does to its estimate, in a sentence; `null` where it is as the factors take it and as the bulletin asks. */
export function spacingRemark(rods: number, rodLengthM: number, spacingM: number): string | null {
  if (rods < 2) return null;
  if (spacingM < rodLengthM * (1 - TOLERANCE)) {
    return `Rods ${spacingM} m apart are closer than their length (${rodLengthM} m): they share the same soil, and the resistance is higher than estimated.`;
  }
  if (spacingM <= BULLETIN_SPACING_M) {
    return `Rods ${spacingM} m apart fit the estimate; the published rule of thumb asks for over ${BULLETIN_SPACING_M} m.`;
  }
  if (spacingM > rodLengthM * (1 + TOLERANCE)) {
    return `Rods ${spacingM} m apart are further than their length (${rodLengthM} m): the resistance is no higher than estimated.`;
  }
  return null;
}
