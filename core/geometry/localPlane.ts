import { type Earth, earthAt } from './earth.ts';
import { gaussSphereAt } from './gaussSphere.ts';
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
 * The azimuthal equidistant plane at `origin`, on the Gauss conformal sphere (`gaussSphere.ts`): distance and bearing from
 * the origin are true, to 1e-9 within 50 km. Elsewhere a length is stretched by at most (r/R)²/6, one part in 100,000 at
 * 50 km from the origin. Beyond the sphere's reach, and for an origin near a pole, it is the plane of the ellipsoid's own
 * geodesics. Each way undoes the other: a round trip returns the same degrees to about 1e-12, across the 180 meridian too.
 */
export function createLocalPlane(origin: LonLat): LocalPlane {
  const { toPlane, fromPlane } = gaussSphereAt(origin);
  return {
    origin,
    earth: earthAt(origin),
    toXy: (lonLat) => toPlane(lonLat) ?? eastNorthM(origin, lonLat),
    toLonLat: (xy) => {
      const near = fromPlane(xy);
      if (near) return near;
      return destination(origin, Math.atan2(xy[0], xy[1]) * degreesPerRadian, Math.hypot(xy[0], xy[1]));
    },
  };
}
