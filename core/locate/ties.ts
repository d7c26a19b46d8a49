import { meetOfTwoTies } from '../geometry/meetOfTwoTies.ts';
import { nearestOnSegment } from '../geometry/polyline.ts';
import { samePostM, type Tie, type TieFix, type Trilateration } from '../geometry/tie.ts';
import { tieReachM } from '../geometry/tieReach.ts';
import { trilaterate } from '../geometry/trilaterate.ts';
import type { Xy } from '../geometry/types.ts';
import { add, scale, subtract, turnLeft, unit, xyBearingDeg, xyDistanceM } from '../geometry/vector.ts';
import { leastOf } from '../model/extremes.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { BuriedPoint, BuriedRole } from '../model/recordThings.ts';
import type { LineEnd } from '../model/things.ts';
import type { GatewayShape } from '../shapes/types.ts';
import type { Survey } from '../survey/types.ts';
import { type Message, message } from '../words/message.ts';
import { type CompassWord, compassWord, postSide } from './compass.ts';
import type { CrossingSource } from './crossingSource.ts';
import { postOfTie, type StoodPost } from './tieFrom.ts';

/** Standard error of a place measured along and square off the opening with one tape; common practice, no source. */
export const offsetSeM = 0.05;

/**
 * Of a point with the same standard error all ways, 19 in 20 lie within this many of them: square root of the 95 % point
 * of chi-square with two degrees of freedom, 5.991. Taken on the total standard error, it is on the safe side.
 */
export const sureFactor = 2.448;

/** Two tapes of a point whose tapes do not all meet are off themselves; an assumption of this project. */
export const pairM = 0.3;

/** A post that a tie of a point was taped from, and the tape. */
export interface UsedTie extends StoodPost {
  readonly distanceM: number;
  readonly seM: number;
}

/** A place where a buried point can be. */
export interface PossiblePlace {
  readonly xy: Xy;
  /** If this is the place, the point lies within this of it 19 times in 20. Metres. */
  readonly withinM: number;
  /** Which way it lies off the line of the posts; null where it stands on that line, or was not taped. */
  readonly side: CompassWord | null;
  /** What the tapes make of it; null where it was not taped, or where they miss each other by no more than their errors. */
  readonly fix: TieFix | null;
}

/** Where a buried point can be, by what was measured. */
export interface SolvedPoint {
  readonly point: BuriedPoint;
  readonly label: Message;
  readonly by: 'ties' | 'offset' | 'gps' | null;
  /**
   * measured: one place. ambiguous: the tapes fit several, and nobody said which. contradictory: the tapes do not meet,
   * whatever else places the point. none: nothing that was measured fixes it.
   */
  readonly basis: 'measured' | 'ambiguous' | 'contradictory' | 'none';
  /** Every place where it can be, the one nearest to where it was drawn first; none where nothing fixes it. */
  readonly places: readonly PossiblePlace[];
  /** Of several places the first is the likelier: the others are further from where it was drawn than errors explain. */
  readonly firstLikelier: boolean;
  readonly ties: readonly UsedTie[];
  /** What the ties come to; null with fewer than two. */
  readonly trilateration: Trilateration | null;
  /** Of tapes that do not meet: where each two of them do. The point is at one of these, if one tape alone is wrong. */
  readonly pairs: readonly Xy[];
}

/** "bend", "west riser foot", or the name it was given. */
export function labelOf({ name, role }: Pick<BuriedPoint, 'name' | 'role'>, shape: GatewayShape): Message {
  if (name.trim() !== '') return message('locate.points.named', { name: name.trim() });
  if (role === 'startFoot') return footLabel(shape, 'start');
  return role === 'endFoot' ? footLabel(shape, 'end') : message(`locate.points.${role}`);
}

/** "west riser foot" */
export function footLabel(shape: Pick<GatewayShape, 'bearingDeg'>, post: LineEnd): Message {
  return message('locate.points.foot', { side: postSide(shape, post) });
}

/** Works one buried point of a crossing out: from its ties, else its offset, else GPS. */
export function solvePoint(point: BuriedPoint, source: CrossingSource): SolvedPoint {
  const { ties, trilateration, taped, pairs } = tapesOf(point, source.postOf);
  const expected = expectedPlace(point.role, source);
  const base = { point, label: labelOf(point, source.shape), ties, trilateration, firstLikelier: false, pairs: [] };
  taped.sort(nearerTo(expected));
  if (taped.length > 0) {
    const basis = taped.length > 1 ? 'ambiguous' : 'measured';
    return { ...base, by: 'ties', basis, places: taped, firstLikelier: isFirstLikelier(taped, expected) };
  }
  const [by, place] = placedOtherwise(point, source);
  const basis = pairs ? 'contradictory' : place ? 'measured' : 'none';
  return { ...base, by, basis, places: place ? [place] : [], pairs: pairs ?? [] };
}

/** Where a point can be by its tapes or a receiver alone, without its opening; where its tapes do not meet, by each two of them. */
export function placesByItself(
  point: BuriedPoint,
  project: Project,
  { plane, gateways }: Survey,
): { readonly places: readonly PossiblePlace[]; readonly contradictory: boolean } {
  const { taped, pairs } = tapesOf(point, (tie) => postOfTie(tie, project, { plane, gateways }));
  if (taped.length > 0) return { places: taped, contradictory: false };
  const byReceiver =
    point.gps && propertyOf(project).placed ? [placeAt(plane.toXy(point.gps.lonLat), sureFactor * point.gps.seM)] : [];
  const byPairs = (pairs ?? []).map((xy) => placeAt(xy, pairM));
  return { places: [...byReceiver, ...byPairs], contradictory: pairs !== null };
}

interface Tapes {
  readonly ties: readonly UsedTie[];
  readonly trilateration: Trilateration | null;
  /** The places that they fit. */
  readonly taped: PossiblePlace[];
  /** Where they do not meet, where each two of them do; null where they say too little for that. */
  readonly pairs: readonly Xy[] | null;
}

function tapesOf(point: BuriedPoint, postOf: CrossingSource['postOf']): Tapes {
  const ties = point.ties.map((tie): UsedTie => ({ ...postOf(tie), distanceM: tie.distanceM, seM: tie.seM }));
  const trilateration = ties.length < 2 ? null : trilaterate(ties.map(asTie));
  const taped = tapedPlaces(point, ties, trilateration);
  // Tapes that are all from one post say too little; they contradict nothing.
  const missed = taped.length === 0 && trilateration && !trilateration.possible && trilateration.reason !== 'onePost';
  return { ties, trilateration, taped, pairs: missed ? pairsThatMeet(ties.map(asTie)) : null };
}

function placeAt(xy: Xy, withinM: number): PossiblePlace {
  return { xy, withinM, side: null, fix: null };
}

/** By tape along and square off the opening, or by a receiver. */
function placedOtherwise(
  { offset, gps }: BuriedPoint,
  { shape, plane, placed }: CrossingSource,
): readonly ['offset' | 'gps', PossiblePlace] | readonly [null, null] {
  if (offset) return ['offset', placeAt(placeByOffset(offset, shape), sureFactor * offsetSeM)];
  if (gps && placed) return ['gps', placeAt(plane.toXy(gps.lonLat), sureFactor * gps.seM)];
  return [null, null];
}

/** All places that the tapes fit; those on the side that was said, where one was and a place is there. */
function tapedPlaces(
  { side }: BuriedPoint,
  ties: readonly UsedTie[],
  trilateration: Trilateration | null,
): PossiblePlace[] {
  if (!trilateration) return [];
  if (trilateration.possible) {
    const { solutions } = trilateration;
    const said = side === null ? [] : solutions.filter((solution) => solution.side === side);
    return (said.length > 0 ? said : solutions).map((fix) => placeOf(fix, ties));
  }
  const { withinTapeError, closest } = trilateration;
  if (!withinTapeError || !closest) return [];
  return [{ xy: closest, withinM: reachM(ties.map(asTie), closest, null), side: null, fix: null }];
}

function placeOf(fix: TieFix, ties: readonly UsedTie[]): PossiblePlace {
  const { point: xy, error, sigma0 } = fix;
  const reach = reachM(ties.map(asTie), xy, fix.side);
  // With three or more tapes that agree worse than they claim, the error grows with their misfit.
  const firstOrderM = error ? sureFactor * error.sePositionM * Math.max(1, sigma0 ?? 1) : Infinity;
  return { xy, withinM: Math.min(firstOrderM, reach), side: sideOf(xy, ties), fix };
}

/** Only so many tapes of a point are laid against each other two by two. */
const mostPaired = 8;

/** The least reach of any two tapes about a place: each two of them hold the point by themselves. */
function reachM(ties: readonly Tie[], xy: Xy, side: TieFix['side'] | null): number {
  const known = side === 'onLine' ? null : side;
  const reaches = twoByTwo(ties).map(([a, b], i) => tieReachM(a, b, xy, sureFactor, i === 0 ? known : null));
  return reaches.length > 0 ? leastOf(reaches) : Infinity;
}

function pairsThatMeet(ties: readonly Tie[]): Xy[] {
  return twoByTwo(ties).flatMap(([a, b]) => {
    const meet = meetOfTwoTies(a, b);
    if (meet.possible) return meet.solutions.map(({ point }) => point);
    return meet.withinTapeError && meet.closest ? [meet.closest] : [];
  });
}

function twoByTwo(ties: readonly Tie[]): (readonly [Tie, Tie])[] {
  const some = ties.slice(0, mostPaired);
  return some.flatMap((a, i) =>
    some
      .slice(i + 1)
      .filter((b) => xyDistanceM(a.post, b.post) > samePostM)
      .map((b) => [a, b] as const),
  );
}

/** Which way a place lies off the line of the first two posts, as far as a tape can tell. */
function sideOf(xy: Xy, ties: readonly UsedTie[]): CompassWord | null {
  const a = ties[0]?.xy;
  const b = a && ties.find((tie) => xyDistanceM(tie.xy, a) > samePostM)?.xy;
  return a && b ? sideOfLine(xy, a, b) : null;
}

/** Nearer to the line than this, a place stands on it. */
const onLineM = 0.01;

/** Which way a place lies off the line through two posts: "north"; null on it. */
export function sideOfLine(xy: Xy, a: Xy, b: Xy): CompassWord | null {
  const [dx, dy] = subtract(b, a);
  // The line well beyond both posts.
  const from: Xy = [a[0] - 100 * dx, a[1] - 100 * dy];
  const to: Xy = [b[0] + 100 * dx, b[1] + 100 * dy];
  const { point, distanceM } = nearestOnSegment(xy, from, to);
  return distanceM > onLineM ? compassWord(xyBearingDeg(point, xy)) : null;
}

function asTie({ xy, distanceM, seM }: UsedTie): Tie {
  return { post: xy, distanceM, seM };
}

/** The nearest first; of two as near, to the centimetre, the left one. */
function nearerTo(expected: Xy): (p: PossiblePlace, q: PossiblePlace) => number {
  const away = ({ xy }: PossiblePlace) => Math.round(xyDistanceM(xy, expected) * 100);
  const hand = ({ fix }: PossiblePlace) => (fix?.side === 'left' ? 0 : 1);
  return (p, q) => away(p) - away(q) || hand(p) - hand(q);
}

/** What a trench that is built differs from its drawing without anybody saying so; an assumption of this project. */
const asDrawnM = 0.5;

function isFirstLikelier([first, second]: readonly PossiblePlace[], expected: Xy): boolean {
  if (!first || !second) return false;
  const furtherM = xyDistanceM(second.xy, expected) - xyDistanceM(first.xy, expected);
  return furtherM > asDrawnM + first.withinM + second.withinM;
}

/** Where a point of this role was drawn. */
export function expectedPlace(role: BuriedRole, { figures, shape }: Pick<CrossingSource, 'figures' | 'shape'>): Xy {
  if (role === 'startFoot') return shape.startPost;
  if (role === 'endFoot') return shape.endPost;
  return figures.path[figures.path.length >> 1] ?? shape.centre;
}

function placeByOffset(
  { alongM, leftM }: NonNullable<BuriedPoint['offset']>,
  { startPost, endPost, bearingDeg }: GatewayShape,
): Xy {
  const angle = (bearingDeg * Math.PI) / 180;
  const apart = xyDistanceM(startPost, endPost) > 0;
  const along: Xy = apart ? unit(subtract(endPost, startPost)) : [Math.sin(angle), Math.cos(angle)];
  return add(startPost, add(scale(along, alongM), scale(turnLeft(along), leftM)));
}

/** How far a place lies along the opening from the start post, and to its left; the inverse of an offset entry. */
export function offsetOf(xy: Xy, { startPost, endPost }: GatewayShape): { alongM: number; leftM: number } {
  const [ux, uy] = unit(subtract(endPost, startPost));
  const [dx, dy] = subtract(xy, startPost);
  return { alongM: dx * ux + dy * uy, leftM: dy * ux - dx * uy };
}
