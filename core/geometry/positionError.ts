import type { Xy } from './types.ts';

/** How surely a point is known, from the first-order propagation of the errors of what was measured. Metres. */
export interface PositionError {
  /** Variances of x and y, and what they share, square metres. */
  readonly covarianceM2: Covariance;
  readonly seXM: number;
  readonly seYM: number;
  /** sqrt(seX² + seY²); not the longer axis of the ellipse. */
  readonly sePositionM: number;
  readonly ellipse: ErrorEllipse;
}

export interface Covariance {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** The ellipse of one standard error. */
export interface ErrorEllipse {
  readonly semiMajorM: number;
  readonly semiMinorM: number;
  /** Direction of the longer axis: degrees clockwise from grid north, 0 <= b < 180. */
  readonly bearingDeg: number;
}

/** What a measured length tells: the unit vector it is measured along, and its standard error in metres. */
export interface Sighting {
  readonly direction: Xy;
  readonly seM: number;
}

/**
 * The error of a point fixed by distances along the given directions: covariance = (sum of u uᵀ / se²)⁻¹, the
 * variance of a weighted least-squares fit (any text on adjustment of observations). Null where the directions all
 * lie on one line, so that the point is not fixed across it.
 */
export function positionError(sightings: readonly Sighting[]): PositionError | null {
  let [xx, xy, yy] = [0, 0, 0];
  for (const {
    direction: [ux, uy],
    seM,
  } of sightings) {
    xx += (ux / seM) ** 2;
    xy += (ux * uy) / seM ** 2;
    yy += (uy / seM) ** 2;
  }
  const determinant = normalDeterminant(sightings);
  if (!(determinant > 1e-18 * (xx + yy) ** 2)) return null;
  const covarianceM2 = { xx: yy / determinant, xy: -xy / determinant + 0, yy: xx / determinant };
  const seXM = Math.sqrt(covarianceM2.xx);
  const seYM = Math.sqrt(covarianceM2.yy);
  return {
    covarianceM2,
    seXM,
    seYM,
    sePositionM: Math.hypot(seXM, seYM),
    ellipse: errorEllipse(covarianceM2, 1 / determinant),
  };
}

/** Determinant of the normal matrix as a sum of squares over all pairs (Cauchy-Binet), so that nothing cancels. */
function normalDeterminant(sightings: readonly Sighting[]): number {
  let determinant = 0;
  for (const [i, p] of sightings.entries()) {
    for (const q of sightings.slice(i + 1)) {
      const turn = p.direction[0] * q.direction[1] - p.direction[1] * q.direction[0];
      determinant += (turn / (p.seM * q.seM)) ** 2;
    }
  }
  return determinant;
}

/** Axes are the square roots of the covariance's eigenvalues; the smaller follows from the determinant. */
function errorEllipse({ xx, xy, yy }: Covariance, determinant: number): ErrorEllipse {
  const major = (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy);
  const bearing = (Math.atan2(2 * xy, yy - xx) * 90) / Math.PI;
  return {
    semiMajorM: Math.sqrt(major),
    semiMinorM: Math.sqrt(determinant / major),
    bearingDeg: ((bearing + 180) % 180) + 0,
  };
}
