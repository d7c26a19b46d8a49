import { largestOf } from '../model/extremes.ts';
import { meetOfTwoTies } from './meetOfTwoTies.ts';
import { type PositionError, positionError } from './positionError.ts';
import { type Side, samePostM, type Tie, type TieFix, type Trilateration } from './tie.ts';
import type { Xy } from './types.ts';
import { add, cross, scale, subtract, turnLeft, xyDistanceM } from './vector.ts';

/**
 * A residual this many of its own standard errors large is a blunder, one chance in a thousand of being wrong: the
 * w-test of W. Baarda, "A testing procedure for use in geodetic networks", 1968.
 */
const blunderLimit = 3.29;
/** Minima nearer to each other than this are the same. */
const samePointM = 1e-5;
/** Pairs among this many posts are enough to start from. */
const mostStartPosts = 8;

interface Minimum {
  readonly point: Xy;
  /** Sum of squared residuals, each over its standard error. */
  readonly misfit: number;
}

/**
 * The weighted least-squares point of three or more ties, not all of one post. Where posts stand in one line the
 * mirror may fit as well: then both are given, the better first. Ties that do not agree give no point; the one that
 * cannot be right is named where leaving it out is the only way to make the rest agree.
 */
export function fitTies(ties: readonly Tie[]): Trilateration {
  const minima = findMinima(ties);
  const best = minima[0]!;
  const fixes = minima
    .filter(({ misfit }) => misfit <= best.misfit + blunderLimit ** 2)
    .slice(0, 2)
    .map((minimum) => fixAt(minimum, ties));
  const fix = fixes[0]!;
  if (largestW(fix, ties) <= blunderLimit) return { possible: true, solutions: fixes };
  return { possible: false, reason: 'disagree', ...blame(fix, ties), closest: fix.point, withinTapeError: false };
}

/** The tie that must be wrong and by how much (measured minus what the others say), or the largest residual. */
function blame(fix: TieFix, ties: readonly Tie[]): { suspect: number | null; misclosureM: number } {
  const suspects = ties.flatMap((tie, suspect) => {
    const points = agreedPoints(ties.filter((_, i) => i !== suspect));
    const misfits = points.map((point) => tie.distanceM - xyDistanceM(tie.post, point));
    return misfits.length > 0 ? [{ suspect, misclosureM: smallest(misfits) }] : [];
  });
  const [only, ...more] = suspects;
  if (only && more.length === 0) return only;
  const largest = fix.residualsM.toSorted((p, q) => Math.abs(q) - Math.abs(p))[0]!;
  return { suspect: null, misclosureM: largest };
}

/** The points that some ties agree on; none where they don't, or where they are all of one post. */
function agreedPoints(ties: readonly Tie[]): Xy[] {
  const [a, b] = ties;
  if (!a || !b || ties.every(({ post }) => xyDistanceM(post, a.post) <= samePostM)) return [];
  if (ties.length === 2) {
    const meet = meetOfTwoTies(a, b);
    if (meet.possible) return meet.solutions.map(({ point }) => point);
    return meet.withinTapeError && meet.closest ? [meet.closest] : [];
  }
  const minima = findMinima(ties);
  return minima.filter((minimum) => largestW(fixAt(minimum, ties), ties) <= blunderLimit).map(({ point }) => point);
}

function smallest(values: readonly number[]): number {
  return values.toSorted((p, q) => Math.abs(p) - Math.abs(q))[0]!;
}

/** The largest residual in its own standard errors; ties that nothing checks don't count. */
function largestW({ point, residualsM, error }: TieFix, ties: readonly Tie[]): number {
  const ws = ties.map((tie, i) => {
    const redundancy = error ? 1 - varianceAlong(error, direction(tie, point)) / tie.seM ** 2 : 1;
    return redundancy > 1e-6 ? Math.abs(residualsM[i]!) / (tie.seM * Math.sqrt(redundancy)) : 0;
  });
  return largestOf(ws);
}

function varianceAlong({ covarianceM2: { xx, xy, yy } }: PositionError, [ux, uy]: Xy): number {
  return ux * ux * xx + 2 * ux * uy * xy + uy * uy * yy;
}

function fixAt({ point, misfit }: Minimum, ties: readonly Tie[]): TieFix {
  return {
    point,
    side: sideOf(point, ties),
    error: positionError(ties.map((tie) => ({ direction: direction(tie, point), seM: tie.seM }))),
    residualsM: ties.map((tie) => tie.distanceM - xyDistanceM(tie.post, point)),
    sigma0: Math.sqrt(misfit / (ties.length - 2)),
  };
}

/** Looking from the first tie's post to the next one that stands elsewhere. */
function sideOf(point: Xy, ties: readonly Tie[]): Side {
  const from = ties[0]!.post;
  const to = ties.find(({ post }) => xyDistanceM(post, from) > samePostM)!.post;
  const offM = cross(subtract(to, from), subtract(point, from)) / xyDistanceM(from, to);
  if (Math.abs(offM) <= samePointM) return 'onLine';
  return offM > 0 ? 'left' : 'right';
}

/** All minima that the meeting points of pairs of ties lead to, the best first. */
function findMinima(ties: readonly Tie[]): Minimum[] {
  const minima = startingPoints(ties)
    .map((start) => descend(start, ties))
    .sort((m, n) => m.misfit - n.misfit);
  const distinct: Minimum[] = [];
  for (const minimum of minima) {
    if (distinct.every(({ point }) => xyDistanceM(point, minimum.point) > samePointM)) distinct.push(minimum);
  }
  return distinct;
}

function startingPoints(ties: readonly Tie[]): Xy[] {
  const some = ties
    .filter(({ post }, i) => ties.findIndex((other) => xyDistanceM(other.post, post) <= samePostM) === i)
    .slice(0, mostStartPosts);
  return some.flatMap((a, i) =>
    some.slice(i + 1).flatMap((b) => {
      const spacing = subtract(b.post, a.post);
      const meet = meetOfTwoTies(a, b);
      const points = meet.possible ? meet.solutions.map(({ point }) => point) : [meet.closest!];
      if (points.length === 2) return points;
      // On the line itself nothing pulls the point off it: start a little to both sides.
      return [0.01, -0.01].map((share) => add(points[0]!, scale(turnLeft(spacing), share)));
    }),
  );
}

/** K. Levenberg, 1944, and D. W. Marquardt, 1963: Gauss-Newton steps, damped where they would climb. */
function descend(start: Xy, ties: readonly Tie[]): Minimum {
  let point = start;
  let misfit = misfitAt(point, ties);
  let damping = 1e-4;
  for (let round = 0; round < 200 && damping < 1e12; round++) {
    const step = dampedStep(point, ties, damping);
    const next = add(point, step);
    const nextMisfit = misfitAt(next, ties);
    if (nextMisfit > misfit) {
      damping *= 10;
      continue;
    }
    [point, misfit] = [next, nextMisfit];
    damping /= 10;
    if (Math.hypot(...step) < 1e-11) break;
  }
  return { point, misfit };
}

function dampedStep(point: Xy, ties: readonly Tie[], damping: number): Xy {
  let [xx, xy, yy, gx, gy] = [0, 0, 0, 0, 0];
  for (const tie of ties) {
    const weight = 1 / tie.seM ** 2;
    const [ux, uy] = direction(tie, point);
    const residual = tie.distanceM - xyDistanceM(tie.post, point);
    xx += weight * ux * ux;
    xy += weight * ux * uy;
    yy += weight * uy * uy;
    gx += weight * residual * ux;
    gy += weight * residual * uy;
  }
  const extra = (damping * (xx + yy)) / 2 + Number.MIN_VALUE;
  const determinant = (xx + extra) * (yy + extra) - xy * xy;
  if (!(determinant > 0)) return [0, 0];
  return [((yy + extra) * gx - xy * gy) / determinant, ((xx + extra) * gy - xy * gx) / determinant];
}

function misfitAt(point: Xy, ties: readonly Tie[]): number {
  return ties.reduce((sum, tie) => sum + ((tie.distanceM - xyDistanceM(tie.post, point)) / tie.seM) ** 2, 0);
}

/** Unit vector from the post to the point; east where they coincide. */
function direction({ post }: Tie, point: Xy): Xy {
  const lengthM = xyDistanceM(post, point);
  return lengthM === 0 ? [1, 0] : scale(subtract(point, post), 1 / lengthM);
}
