import { positionError } from './positionError.ts';
import type { Tie, TieFix, Trilateration } from './tie.ts';
import type { Xy } from './types.ts';
import { add, between, scale, subtract, turnLeft, unit, xyDistanceM } from './vector.ts';

/** Where the circles of two ties meet: left and right of the line from `a` to `b`, or on it where they only touch. The posts must not coincide. */
export function meetOfTwoTies(a: Tie, b: Tie): Trilateration {
  const spacingM = xyDistanceM(a.post, b.post);
  const shortM = a.distanceM + b.distanceM - spacingM;
  const longM = spacingM - Math.abs(a.distanceM - b.distanceM);
  const misclosureM = Math.min(shortM, longM);
  // No more digits than these: large coordinates leave their rounding in the spacing.
  const coordinates = [...a.post, ...b.post].reduce((sum, value) => sum + Math.abs(value), 0);
  const touchingM = 1e-12 * (spacingM + a.distanceM + b.distanceM) + 1e-15 * coordinates;
  if (misclosureM < -touchingM) {
    return {
      possible: false,
      reason: shortM < longM ? 'tooShort' : 'tooLong',
      misclosureM,
      suspect: null,
      closest: closestOnLine(a, b, misclosureM),
      withinTapeError: -misclosureM <= 3 * Math.hypot(a.seM, b.seM),
    };
  }
  const along = unit(subtract(b.post, a.post));
  const fromAM = (spacingM + ((a.distanceM - b.distanceM) * (a.distanceM + b.distanceM)) / spacingM) / 2;
  const foot = add(a.post, scale(along, fromAM));
  if (misclosureM <= touchingM) {
    return {
      possible: true,
      solutions: [{ point: foot, side: 'onLine', error: null, residualsM: [0, 0], sigma0: null }],
    };
  }
  const heightM = (2 * triangleArea(spacingM, a.distanceM, b.distanceM)) / spacingM;
  const solutions = (['left', 'right'] as const).map((side): TieFix => {
    const offset = scale(turnLeft(along), side === 'left' ? heightM : -heightM);
    const fromA = add(scale(along, fromAM), offset);
    const fromB = add(scale(along, fromAM - spacingM), offset);
    const error = positionError([
      { direction: scale(fromA, 1 / a.distanceM), seM: a.seM },
      { direction: scale(fromB, 1 / b.distanceM), seM: b.seM },
    ]);
    return { point: add(a.post, fromA), side, error, residualsM: [0, 0], sigma0: null };
  });
  return { possible: true, solutions };
}

/** On the line of the posts, the misclosure shared out by the variances of the two tapes. */
function closestOnLine(a: Tie, b: Tie, misclosureM: number): Xy {
  const spacingM = xyDistanceM(a.post, b.post);
  const shareOfA = a.seM ** 2 / (a.seM ** 2 + b.seM ** 2);
  const tooShort = a.distanceM + b.distanceM < spacingM;
  // Where one tape is too long, the point lies beyond the other tape's post.
  const beyondA = !tooShort && b.distanceM > a.distanceM;
  const lengthened = tooShort || beyondA ? -misclosureM : misclosureM;
  const fromAM = a.distanceM + lengthened * shareOfA;
  return between(a.post, b.post, (beyondA ? -fromAM : fromAM) / spacingM);
}

/** W. Kahan, "Miscalculating Area and Angles of a Needle-like Triangle", 2014: exact to rounding for needles too. */
function triangleArea(a: number, b: number, c: number): number {
  const [z, y, x] = [a, b, c].sort((p, q) => p - q) as [number, number, number];
  const product = (x + (y + z)) * (z - (x - y)) * (z + (x - y)) * (x + (y - z));
  return Math.sqrt(Math.max(0, product)) / 4;
}
