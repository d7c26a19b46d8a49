import { type Earth, earthAt } from './earth.ts';
import { destination, eastNorthM } from './geodesic.ts';
import type { LonLat, Xy } from './types.ts';

const degreesPerRadian = 180 / Math.PI;

/** The working plane of a property: metres east and north of `origin`. */
export interface LocalPlane {
  readonly origin: LonLat;
  /** The measures round the same origin. */
  readonly earth: Earth;
  readonly toXy: (lonLat: LonLat) => Xy;
  /** Longitude comes back in [-180, 180]. */
  readonly toLonLat: (xy: Xy) => LonLat;
}

/**
 * The azimuthal equidistant plane of the WGS 84 ellipsoid at `origin` (J. P. Snyder, "Map Projections: A Working
 * Manual", USGS Professional Paper 1395, 1987, in its exact geodesic form): distance and bearing from the origin are
 * true. Elsewhere a length is stretched by at most (r/R)²/6, one part in 100,000 at 50 km from the origin.
 * Both ways are exact, so that a round trip returns the same degrees to about 1e-12, across the 180 meridian too.
 */
export function createLocalPlane(origin: LonLat): LocalPlane {
  return {
    origin,
    earth: earthAt(origin),
    toXy: (lonLat) => eastNorthM(origin, lonLat),
    toLonLat: ([x, y]) => destination(origin, Math.atan2(x, y) * degreesPerRadian, Math.hypot(x, y)),
  };
}
