import { ellipsoid } from './geodesic.ts';
import type { LonLat } from './types.ts';

/**
 * The sphere on which the country round a place lies as it does on the ellipsoid (C. F. Gauss, "Untersuchungen über
 * Gegenstände der höheren Geodäsie", 1844; the first step of the Swiss and the Dutch national grids). Its radius is the
 * mean radius of curvature at the place, R = sqrt(M0 N0); longitudes from the place are stretched by
 * alpha = sqrt(1 + e² cos⁴ phi0 / (1 - e²)), and latitudes go over by the isometric latitude, so that angles are kept.
 * Scale is true at the place and grows by a term of the third order in the distance from it.
 */
export interface GaussSphere {
  readonly radiusM: number;
  /** Longitude from the origin's meridian and latitude on the sphere, degrees; null beyond `gaussReachM`. */
  readonly toSphere: (lonLat: LonLat) => LonLat | null;
  /** Longitude comes back in [-180, 180]. */
  readonly fromSphere: (onSphere: LonLat) => LonLat;
}

/** How far from the origin the sphere is used: a length is right to 4e-8 there. */
export const gaussReachM = 200_000;

/** Nearer to a pole than this an origin has no sphere: formulas with an arcsine of the latitude lose their digits. */
const mostLatitudeDeg = 85;

const radians = Math.PI / 180;
const e2 = ellipsoid.flattening * (2 - ellipsoid.flattening);
const e = Math.sqrt(e2);

/** The Gauss conformal sphere at a place. */
export function gaussSphereAt([lon0, lat0]: LonLat): GaussSphere {
  const sine = Math.sin(lat0 * radians);
  const radiusM = (ellipsoid.semiMajorM * Math.sqrt(1 - e2)) / (1 - e2 * sine ** 2);
  const alpha = Math.sqrt(1 + (e2 * (1 - sine ** 2) ** 2) / (1 - e2));
  const sineOnSphere = sine / alpha;
  const latitude0 = Math.asin(sineOnSphere);
  const cosine0 = Math.cos(latitude0);
  const shift = Math.asinh(sineOnSphere / cosine0) - alpha * isometric(lat0 * radians);
  const reach = Math.abs(lat0) <= mostLatitudeDeg ? gaussReachM / radiusM : -1;
  return {
    radiusM,
    toSphere([lon, lat]) {
      const tangent = Math.sinh(alpha * isometric(lat * radians) + shift);
      const latitude = Math.atan(tangent);
      const longitude = alpha * wrapped(lon - lon0) * radians;
      const north = latitude - latitude0;
      const east = longitude * Math.max(cosine0, 1 / Math.sqrt(1 + tangent * tangent));
      return north * north + east * east <= reach * reach && reach > 0
        ? [longitude / radians, latitude / radians]
        : null;
    },
    fromSphere([longitude, latitude]) {
      const q = (Math.asinh(Math.tan(latitude * radians)) - shift) / alpha;
      return [wrapped(lon0 + longitude / alpha), fromIsometric(q) / radians];
    },
  };
}

/** The isometric latitude of the ellipsoid, radians. */
function isometric(latitude: number): number {
  return Math.asinh(Math.tan(latitude)) - e * Math.atanh(e * Math.sin(latitude));
}

/** The latitude of an isometric latitude: each round gains more than two digits. */
function fromIsometric(q: number): number {
  let onSphere = q;
  for (let round = 0; round < 10; round++) {
    const next = q + e * Math.atanh(e * Math.tanh(onSphere));
    if (next === onSphere) break;
    onSphere = next;
  }
  return Math.atan(Math.sinh(onSphere));
}

/** A longitude within half a turn of 0; one that is there already keeps its last digit. */
function wrapped(lon: number): number {
  if (lon >= -180 && lon <= 180) return lon;
  return lon - 360 * Math.round(lon / 360);
}
