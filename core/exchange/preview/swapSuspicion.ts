import { earthAt } from '../../geometry/earth.ts';
import type { LonLat } from '../../model/things.ts';
import type { PositionReader } from './positions.ts';
import type { Preview } from './types.ts';

/** Further from the property than this, a file that would lie near it with its coordinates exchanged looks exchanged. */
const farM = 500_000;

/** Why latitude and longitude look exchanged, or null. */
export function swapSuspicion(
  { seen }: PositionReader,
  [weightiest]: Preview['groups'],
  nearTo: LonLat | null,
): string | null {
  if (seen.swappedFits > seen.unswappedFits) {
    return 'Many latitudes are above 90: latitude and longitude look exchanged.';
  }
  if (!weightiest || !nearTo) return null;
  const { middle } = weightiest;
  const { distanceM } = earthAt(nearTo);
  if (Math.abs(middle[0]) > 90 || distanceM(nearTo, middle) < farM) return null;
  if (distanceM(nearTo, [middle[1], middle[0]]) >= farM) return null;
  return 'The file lies far from this property, and would lie on it with latitude and longitude exchanged.';
}
