/**
 * The under-gate path: a circular arc between two riser feet. It is described by its chord (the distance between the
 * feet) and its bow (the sagitta: how far the middle of the arc stands off the chord). Where a bow carries a sign it
 * is positive to the left, looking from the first foot to the second; a bow of 0 is the straight line.
 *
 * radius = (w²/4 + s²) / 2s, central angle = 4 atan(2s/w): plane geometry of a circular segment, any handbook.
 */

import type { Xy } from './types.ts';
import { add, cross, dot, scale, subtract, turnLeft, unit, xyDistanceM } from './vector.ts';

/** A bow under this share of its chord is straight: the arc differs from the chord by less than a double can hold. */
const straightShare = 1e-9;

export interface ArcFigures {
  /** Infinity for the straight line. */
  readonly radiusM: number;
  readonly centralAngleDeg: number;
  readonly lengthM: number;
}

/**
 * Radius, central angle and length of the arc of a chord and a bow of either sign, metres. A bow of more than half
 * the chord is an arc longer than a semicircle.
 * @throws RangeError for a chord below 0 or figures that are not finite.
 */
export function arcFigures(chordM: number, bowM: number): ArcFigures {
  checkFigures(chordM, bowM);
  if (isStraight(chordM, bowM)) return { radiusM: Infinity, centralAngleDeg: 0, lengthM: chordM };
  const sagittaM = Math.abs(bowM);
  const radiusM = chordM ** 2 / (8 * sagittaM) + sagittaM / 2;
  const angle = 4 * Math.atan2(2 * sagittaM, chordM);
  return { radiusM, centralAngleDeg: (angle * 180) / Math.PI, lengthM: radiusM * angle };
}

/**
 * How far the arc stands off the straight line between the feet, `alongM` metres along it from the first foot; with
 * the sign of the bow. The largest is the bow itself, in the middle.
 * @throws RangeError for a place beyond the feet.
 */
export function arcOffsetM(chordM: number, bowM: number, alongM: number): number {
  checkFigures(chordM, bowM);
  if (!(alongM >= 0 && alongM <= chordM)) {
    throw new RangeError(`${alongM} m along a chord of ${chordM} m is beyond its ends.`);
  }
  if (isStraight(chordM, bowM)) return 0;
  const { radiusM } = arcFigures(chordM, bowM);
  const fromMiddleM = alongM - chordM / 2;
  const dropM = fromMiddleM ** 2 / (radiusM + Math.sqrt(Math.max(0, radiusM ** 2 - fromMiddleM ** 2)));
  return Math.sign(bowM) * (Math.abs(bowM) - dropM) + 0;
}

/** The point of the arc a fraction of its length from `from` (0) to `to` (1), exactly the feet at the ends. */
export function pointOnArc(from: Xy, to: Xy, bowM: number, fraction: number): Xy {
  if (fraction <= 0) return from;
  if (fraction >= 1) return to;
  const chordM = xyDistanceM(from, to);
  const along = chordM === 0 ? ([1, 0] as const) : unit(subtract(to, from));
  if (isStraight(chordM, bowM)) return add(from, scale(along, chordM * fraction));
  const { radiusM, centralAngleDeg } = arcFigures(chordM, bowM);
  const fromMiddle = (fraction - 0.5) * ((centralAngleDeg * Math.PI) / 180);
  const alongM = chordM / 2 + radiusM * Math.sin(fromMiddle);
  const offsetM = Math.sign(bowM) * (Math.abs(bowM) - 2 * radiusM * Math.sin(fromMiddle / 2) ** 2);
  return add(from, add(scale(along, alongM), scale(turnLeft(along), offsetM)));
}

/**
 * The arc as a path with even steps that stays within `toleranceM` of it; both feet exact, and the middle of a curved
 * arc always a vertex.
 */
export function arcPath(from: Xy, to: Xy, bowM: number, toleranceM = 0.005): Xy[] {
  const { radiusM, centralAngleDeg } = arcFigures(xyDistanceM(from, to), bowM);
  if (radiusM === Infinity) return [from, to];
  const steps = arcSteps(radiusM, centralAngleDeg, toleranceM);
  return Array.from({ length: steps + 1 }, (_, i) => pointOnArc(from, to, bowM, i / steps));
}

/** Into how many even steps an arc is cut so that their chords stay within `toleranceM` of it; an even number. */
export function arcSteps(radiusM: number, centralAngleDeg: number, toleranceM = 0.005): number {
  const stepRad = 2 * Math.acos(Math.max(-1, 1 - toleranceM / radiusM));
  return 2 * Math.max(1, Math.ceil((centralAngleDeg * Math.PI) / 180 / stepRad / 2));
}

/**
 * The signed bow of the arc through both feet and a dragged point. Where that arc would bow more than `maxBowM`
 * (unless told otherwise, half the chord: a semicircle) the bow is `maxBowM`, and its arc the nearest to the point.
 */
export function bowThrough(from: Xy, to: Xy, dragged: Xy, maxBowM = xyDistanceM(from, to) / 2): number {
  const chordM = xyDistanceM(from, to);
  if (chordM === 0) return 0;
  const along = unit(subtract(to, from));
  const toDragged = subtract(dragged, from);
  const x = dot(along, toDragged);
  const y = cross(along, toDragged);
  const beyondFeet = x * (x - chordM);
  if (y === 0) return beyondFeet > 0 ? maxBowM : 0;
  // The centre of the circle lies on the middle of the chord, this far to the dragged point's side of it.
  const centre = (beyondFeet + y * y) / (2 * Math.abs(y));
  const radius = Math.hypot(chordM / 2, centre);
  const sagitta = centre > 0 ? centre + radius : chordM ** 2 / 4 / (radius - centre);
  return Math.sign(y) * Math.min(sagitta, maxBowM);
}

function isStraight(chordM: number, bowM: number): boolean {
  return Math.abs(bowM) <= straightShare * chordM;
}

function checkFigures(chordM: number, bowM: number): void {
  if (!(chordM >= 0 && Number.isFinite(chordM))) {
    throw new RangeError(`The distance between the riser feet must be 0 m or more; it is ${chordM}.`);
  }
  if (!Number.isFinite(bowM)) throw new RangeError(`The bow must be a number of metres; it is ${bowM}.`);
}
