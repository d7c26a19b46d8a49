import { earthAt } from '../../geometry/earth.ts';
import type { LonLat } from '../../model/things.ts';
import { type Message, message } from '../../words/message.ts';
import type { PositionReader } from './positions.ts';
import type { Preview } from './types.ts';

/** Further from the property than this, a file that would lie near it with its coordinates exchanged looks exchanged. */
const farM = 500_000;

/** Why latitude and longitude look exchanged, or null. */
export function swapSuspicion(
  { seen }: PositionReader,
  [weightiest]: Preview['groups'],
  nearTo: LonLat | null,
): Message | null {
  if (seen.swappedFits > seen.unswappedFits) {
    return message('exchange.note.latitudesAbove90');
  }
  if (!weightiest || !nearTo) return null;
  const { middle } = weightiest;
  const { distanceM } = earthAt(nearTo);
  if (Math.abs(middle[0]) > 90 || distanceM(nearTo, middle) < farM) return null;
  if (distanceM(nearTo, [middle[1], middle[0]]) >= farM) return null;
  return message('exchange.note.wouldFitSwapped');
}
