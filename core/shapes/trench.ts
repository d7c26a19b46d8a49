import { arcFigures, arcPath, arcSteps } from '../geometry/arc.ts';
import type { LocalPlane } from '../geometry/localPlane.ts';
import type { LonLat, Xy } from '../geometry/types.ts';

/** Where the two posts of an opening stand, on the earth and in the working plane. */
export interface Posts {
  readonly plane: LocalPlane;
  readonly startPost: Xy;
  readonly endPost: Xy;
  readonly startPostAt: LonLat;
  readonly endPostAt: LonLat;
}

/** An arc with a larger radius than this bows a gate by less than 2 mm, and its centre is out of the country: it is laid in the plane. */
const flattestM = 50_000;

/**
 * The trench under an opening, from the start post's foot to the end post's, bowed to the left (positive) or the right,
 * looking that way. Turf sets it out on the earth: the middle between the posts, the bow square to the way across from
 * there, the centre behind it, and the arc about that with even steps, as fine as `arcPath` makes them.
 */
export function trenchUnder({ plane, startPost, endPost, startPostAt, endPostAt }: Posts, signedBowM: number): Xy[] {
  const { earth, toXy } = plane;
  const { radiusM, centralAngleDeg } = arcFigures(earth.distanceM(startPostAt, endPostAt), signedBowM);
  if (!(radiusM <= flattestM)) return arcPath(startPost, endPost, signedBowM);
  const middle = earth.midpoint(startPostAt, endPostAt);
  const toEndDeg = earth.bearingDeg(middle, endPostAt);
  const outwardDeg = signedBowM > 0 ? toEndDeg - 90 : toEndDeg + 90;
  // From the middle of the chord: the bow goes outward, and the centre lies one radius behind the bow.
  const centre = earth.destination(middle, outwardDeg, Math.abs(signedBowM) - radiusM);
  const topDeg = earth.bearingDeg(centre, earth.destination(middle, outwardDeg, Math.abs(signedBowM)));
  const half = centralAngleDeg / 2;
  const arc = earth.arc(centre, radiusM, topDeg - half, topDeg + half, arcSteps(radiusM, centralAngleDeg)).map(toXy);
  // Round the centre it goes clockwise, which is from start to end where it bows to the left.
  if (signedBowM < 0) arc.reverse();
  return [startPost, ...arc.slice(1, -1), endPost];
}
