import type { LonLat, Xy } from './types.ts';

/** The ellipsoid itself (World Geodetic System 1984, NIMA TR8350.2, table 3.1): semi-major axis, metres, and flattening. */
export const ellipsoid = { semiMajorM: 6_378_137, flattening: 1 / 298.257223563 };

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
  /**
   * Metres east and north of the origin in the azimuthal equidistant plane of the sphere (J. P. Snyder, "Map Projections: A
   * Working Manual", USGS Professional Paper 1395, 1987, pages 195 to 197); null beyond `gaussReachM`. Bearings from the
   * origin are those of the ellipsoid, distances as near to them as the sphere is.
   */
  readonly toPlane: (lonLat: LonLat) => Xy | null;
  /** The way back; null where the place lies beyond `gaussReachM`. */
  readonly fromPlane: (xy: Xy) => LonLat | null;
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
  /** The latitude on the sphere, radians, of its tangent; null where the place is too far. Both ways of the plane ask this. */
  const latitudeWithinReach = (longitude: number, tangent: number): number | null => {
    const latitude = Math.atan(tangent);
    const north = latitude - latitude0;
    const east = longitude * Math.max(cosine0, 1 / Math.sqrt(1 + tangent * tangent));
    return north * north + east * east <= reach * reach && reach > 0 ? latitude : null;
  };
  /** Longitude from the origin's meridian and latitude, radians. */
  const onSphere = ([lon, lat]: LonLat): readonly [longitude: number, latitude: number] | null => {
    const tangent = Math.sinh(alpha * isometric(lat * radians) + shift);
    const longitude = alpha * wrapped(lon - lon0) * radians;
    const latitude = latitudeWithinReach(longitude, tangent);
    return latitude === null ? null : [longitude, latitude];
  };
  const onEarth = (longitude: number, tangent: number): LonLat => {
    const q = (Math.asinh(tangent) - shift) / alpha;
    return [wrapped(lon0 + longitude / radians / alpha), fromIsometric(q) / radians];
  };
  return {
    radiusM,
    toSphere(lonLat) {
      const place = onSphere(lonLat);
      return place && [place[0] / radians, place[1] / radians];
    },
    fromSphere: ([longitude, latitude]) => onEarth(longitude * radians, Math.tan(latitude * radians)),
    toPlane(lonLat) {
      const place = onSphere(lonLat);
      if (!place) return null;
      const [longitude, latitude] = place;
      const cosine = Math.cos(latitude);
      const half = Math.sin(longitude / 2);
      const east = cosine * Math.sin(longitude);
      const north = Math.sin(latitude - latitude0) + 2 * sineOnSphere * cosine * half * half;
      // The sine of the angle at the middle of the earth, which is under 2 degrees.
      const sine = Math.sqrt(east * east + north * north);
      const factor = sine === 0 ? 0 : (radiusM * Math.asin(sine)) / sine;
      return [east * factor + 0, north * factor + 0];
    },
    fromPlane([x, y]) {
      const lengthM = Math.sqrt(x * x + y * y);
      // Well outside, where sines and arctangents would come round again.
      if (!(lengthM <= 2 * reach * radiusM)) return null;
      if (lengthM === 0) return [wrapped(lon0), lat0];
      const angle = lengthM / radiusM;
      const sine = Math.sin(angle);
      const cosine = Math.cos(angle);
      const north = (y / lengthM) * sine;
      const east = (x / lengthM) * sine;
      const forward = cosine0 * cosine - sineOnSphere * north;
      const tangent = (sineOnSphere * cosine + cosine0 * north) / Math.sqrt(forward * forward + east * east);
      const longitude = Math.atan2(east, forward);
      return latitudeWithinReach(longitude, tangent) === null ? null : onEarth(longitude, tangent);
    },
  };
}

/** The isometric latitude of the ellipsoid, radians. */
function isometric(latitude: number): number {
  return Math.asinh(Math.tan(latitude)) - e * Math.atanh(e * Math.sin(latitude));
}

/**
 * The latitude of an isometric latitude, by Newton's method in the isometric latitude of the sphere: the first guess is right
 * to 7e-3, each round squares that and takes e² of it away, so that the third changes nothing any more.
 */
function fromIsometric(q: number): number {
  let onSphere = q;
  for (let round = 0; round < 3; round++) {
    const sine = Math.tanh(onSphere);
    const rest = onSphere - e * Math.atanh(e * sine) - q;
    onSphere -= (rest * (1 - e2 * sine * sine)) / (1 - e2);
  }
  return Math.atan(Math.sinh(onSphere));
}

/** A longitude within half a turn of 0; one that is there already keeps its last digit. */
function wrapped(lon: number): number {
  if (lon >= -180 && lon <= 180) return lon;
  return lon - 360 * Math.round(lon / 360);
}
