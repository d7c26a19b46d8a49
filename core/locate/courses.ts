import { arcFigures, arcPath, bowThrough } from '../geometry/arc.ts';
import { cumulativeLengthsM } from '../geometry/polyline.ts';
import type { Xy } from '../geometry/types.ts';
import { xyDistanceM } from '../geometry/vector.ts';
import { largestOf } from '../model/extremes.ts';
import type { BuriedRole } from '../model/recordThings.ts';
import { assumedM } from './certainty.ts';
import type { CrossingSource } from './crossingSource.ts';
import { pairM, type SolvedPoint } from './ties.ts';

/** A stretch of ground where a trench may run. */
export interface Course {
  readonly path: readonly Xy[];
  /** If the trench runs here, it lies within this of the path: 19 times in 20 where measured, assumed elsewhere. Metres. */
  readonly withinM: number;
}

export interface Courses {
  /**
   * Every stretch of ground where the trench may run, each with its own error: one whole trench where nothing is left
   * open. None of them counts less than another.
   */
  readonly courses: readonly Course[];
  /** Places of points that no course leads through, each with its own error: cable may lie there too. */
  readonly spots: readonly Stop[];
  /**
   * Plan of one whole trench from the start post's riser foot to the end post's, through the first place of every point:
   * of several the one nearest to the drawing.
   */
  readonly path: readonly Xy[];
  /** The longest trench that it may be; where the bow is assumed, with twice that bow. */
  readonly longestM: number;
  /** The bow of `path` is the default share of the width: nobody measured it. */
  readonly bowAssumed: boolean;
  /** Both feet and what lies between them were measured, whether or not it is one place. */
  readonly complete: boolean;
}

/** A place where a point lies, or may lie. */
export interface Stop {
  readonly xy: Xy;
  readonly withinM: number;
  /** False: as drawn, or where only some of a point's tapes meet. */
  readonly measured: boolean;
}

/** A trench does not bow more than this share of the distance between its feet. */
const mostBowShare = 2;

/** Every way a trench may run, by its points as far as they are known, and as drawn for the rest. */
export function coursesOf(source: CrossingSource, points: readonly SolvedPoint[]): Courses {
  const feet = [footOf('startFoot', source, points), footOf('endFoot', source, points)] as const;
  // There is one foot at either end, and one bend of an arc; a second one in a file is no part of the trench.
  const furtherFeet = [...furtherOf('startFoot', points), ...furtherOf('endFoot', points)];
  if (source.record?.route === 'points') {
    return { ...fromPointToPoint(feet, source, points), spots: [...furtherFeet, ...whereTwoMeet(points)] };
  }
  // An arc passes the further points by.
  const passedBy = [...furtherOf('bend', points), ...stopsOf('point', points).flat()];
  return { ...arcs(feet, source, points), spots: [...furtherFeet, ...passedBy, ...whereTwoMeet(points)] };
}

type Feet = readonly [start: readonly Stop[], end: readonly Stop[]];
type Found = Omit<Courses, 'spots'>;

/** Where a riser foot can be: where it was measured, or beside its post as drawn. */
function footOf(
  role: 'startFoot' | 'endFoot',
  { shape }: CrossingSource,
  points: readonly SolvedPoint[],
): readonly Stop[] {
  const placed = stopsOf(role, points)[0];
  if (placed) return placed;
  return [{ xy: role === 'startFoot' ? shape.startPost : shape.endPost, withinM: assumedM.bowOnly, measured: false }];
}

/** The places of each point of a role that has any. */
function stopsOf(role: BuriedRole, points: readonly SolvedPoint[]): (readonly Stop[])[] {
  return points
    .filter(({ point, places }) => point.role === role && places.length > 0)
    .map(({ places }) => places.map(({ xy, withinM }) => ({ xy, withinM, measured: true })));
}

/** The places of all points of a role but the first. */
function furtherOf(role: BuriedRole, points: readonly SolvedPoint[]): readonly Stop[] {
  return stopsOf(role, points).slice(1).flat();
}

function isMeasured(stops: readonly Stop[]): boolean {
  return stops[0]?.measured === true;
}

/** What a contradiction makes of a course: nothing better than drawn. */
function leastWithinM(
  points: readonly SolvedPoint[],
  { figures }: CrossingSource,
  roles: readonly BuriedRole[],
): number {
  const open = points.some(({ basis, places, point }) => {
    return basis === 'contradictory' && places.length === 0 && roles.includes(point.role);
  });
  return open ? assumedM.drawnTrench + figures.bowM : 0;
}

/** An arc from foot to foot through each place of the bend; with the crossing's own bow where no bend is known. */
function arcs(feet: Feet, source: CrossingSource, points: readonly SolvedPoint[]): Found {
  const { crossing, bowM, bowAssumed } = source.figures;
  const bends = stopsOf('bend', points)[0] ?? null;
  const lost = points.find(({ point, basis }) => point.role === 'bend' && basis === 'contradictory') ?? null;
  const leastM = leastWithinM(points, source, ['startFoot', 'bend', 'endFoot']);
  const drawnBowM = crossing.bowSide === 'left' ? bowM : -bowM;
  // Tapes to the bend that do not meet do not tell on which side it lies either.
  const bows = lost && lost.point.side === null ? [drawnBowM, -drawnBowM] : [drawnBowM];
  const courses = pairsOf(...feet).flatMap(([start, end]): Course[] => {
    if (bends) {
      return bends.map((bend) => {
        return { path: arcThrough(start.xy, bend.xy, end.xy), withinM: Math.max(leastM, strayM([start, bend, end])) };
      });
    }
    const withinM = Math.max(leastM, bowedM(start, end, source.figures));
    const asDrawn = !start.measured && !end.measured;
    return bows.map((signedM): Course => {
      const drawn = asDrawn && signedM === drawnBowM;
      return { path: drawn ? source.figures.path : arcPath(start.xy, end.xy, signedM), withinM };
    });
  });
  const widestM = bends ? 0 : bowM * (bowAssumed ? 2 : 1);
  const lengths = pairsOf(...feet).map(([start, end]) => arcFigures(xyDistanceM(start.xy, end.xy), widestM).lengthM);
  return {
    courses,
    path: courses[0]!.path,
    longestM: Math.max(largestOf(lengths), largestOf(courses.map(({ path }) => pathLengthM(path)))),
    bowAssumed: !bends && bowAssumed,
    complete: feet.every(isMeasured) && bends !== null,
  };
}

/** Between stops that it goes through, a trench is as sure as the least sure of them, and strays besides. */
function strayM(stops: readonly Stop[]): number {
  return largestOf(stops.map(({ withinM }) => withinM)) + assumedM.betweenPoints;
}

/** Without a bend: what nobody measured is assumed. */
function bowedM(start: Stop, end: Stop, { bowM, bowAssumed }: CrossingSource['figures']): number {
  if (start.measured || end.measured) return strayM([start, end]) + (bowAssumed ? bowM : 0);
  return bowAssumed ? assumedM.drawnTrench + bowM : assumedM.bowOnly;
}

function arcThrough(start: Xy, bend: Xy, end: Xy): readonly Xy[] {
  const signedBowM = bowThrough(start, end, bend, Infinity);
  // A bend beyond the feet lies on no arc that anybody digs; nor is there one where both feet are at one place.
  const chordM = xyDistanceM(start, end);
  return chordM > 0 && Math.abs(signedBowM) <= mostBowShare * chordM
    ? arcPath(start, end, signedBowM)
    : [start, bend, end];
}

/**
 * Straight from point to point. Places of neighbours are joined each with each, so that the courses grow with the
 * points, not with the ways to choose among them; stretches between points of one place stay in one piece.
 */
function fromPointToPoint([starts, ends]: Feet, source: CrossingSource, points: readonly SolvedPoint[]): Found {
  const between = points
    .filter(({ point, places }) => (point.role === 'bend' || point.role === 'point') && places.length > 0)
    .map(({ places }) => places.map(({ xy, withinM }): Stop => ({ xy, withinM, measured: true })));
  const leastM = leastWithinM(points, source, ['startFoot', 'bend', 'point', 'endFoot']);
  const all = [starts, ...between, ends];
  const within = (stops: readonly Stop[]) =>
    Math.max(leastM, between.length === 0 ? bowedM(stops[0]!, stops.at(-1)!, source.figures) : strayM(stops));
  const courses: Course[] = [];
  let longestM = 0;
  let run: Stop[] = [];
  const finish = () => {
    if (run.length > 1) courses.push({ path: run.map(({ xy }) => xy), withinM: within(run) });
    run = [];
  };
  for (const [i, here] of all.entries()) {
    const next = all[i + 1];
    if (here.length === 1) run.push(here[0]!);
    if (next) longestM += largestOf(pairsOf(here, next).map(([a, b]) => xyDistanceM(a.xy, b.xy)));
    if (!next || (here.length === 1 && next.length === 1)) continue;
    finish();
    for (const [a, b] of pairsOf(here, next)) courses.push({ path: [a.xy, b.xy], withinM: within([a, b]) });
  }
  finish();
  return {
    courses,
    path: all.map(([first]) => first!.xy),
    longestM,
    bowAssumed: between.length === 0 && source.figures.bowAssumed,
    complete: isMeasured(starts) && isMeasured(ends) && between.length > 0,
  };
}

/** Where two tapes of a point meet that do not all meet. */
function whereTwoMeet(points: readonly SolvedPoint[]): Stop[] {
  return points.flatMap(({ pairs }) => pairs.map((xy): Stop => ({ xy, withinM: pairM, measured: false })));
}

function pathLengthM(path: readonly Xy[]): number {
  return cumulativeLengthsM(path).at(-1) ?? 0;
}

function pairsOf<A, B>(first: readonly A[], second: readonly B[]): (readonly [A, B])[] {
  return first.flatMap((a) => second.map((b) => [a, b] as const));
}
