import { type Box, boxAround, boxesMeet, growBox } from '../geometry/plane/box.ts';
import { pointInRing } from '../geometry/plane/pointInRing.ts';
import { type PolylineGap, polylineGap } from '../geometry/plane/polylineGap.ts';
import { xyBearingDeg } from '../geometry/plane/xyBearing.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import type { Project } from '../model/project.ts';
import type { Survey } from '../registers/types.ts';
import { type BuriedThing, buriedThings, overheadLines } from './buriedThings.ts';

/** Where somebody will dig. An area's path is its outline, the first corner not repeated. */
export interface Dig {
  readonly shape: 'point' | 'line' | 'area';
  readonly path: readonly LonLat[];
  /** How far off the place itself may be: drawn on a map, read off a receiver, taped. Metres. */
  readonly errorM: number;
  /** Everything nearer than this is named. */
  readonly withinM: number;
}

export interface DigFinding {
  readonly thing: BuriedThing;
  /** From the edge of the dig; 0 where the thing crosses it or lies in it. */
  readonly distanceM: number;
  /** Where the thing comes nearest, and which way that is from the dig (null where it lies in it). */
  readonly nearest: Xy;
  readonly nearestAt: LonLat;
  readonly bearingDeg: number | null;
  /** Both errors together: how far off the distance may be. */
  readonly errorM: number;
  /** The thing may lie in the dig: what is not known is as much as what lies between. */
  readonly overlap: boolean;
}

export interface DigAnswer {
  /** Nearest first. */
  readonly findings: readonly DigFinding[];
  /** Power lines overhead within the distance, for machines that reach up. */
  readonly overhead: readonly DigFinding[];
}

/** Nearer than this a thing is met. */
const touchingM = 0.005;

/**
 * What lies buried near a dig, of all that is in the file. A thing is named when it may be within the distance: its
 * error and the dig's own count against the distance.
 */
export function digCheck(project: Project, survey: Survey, dig: Dig): DigAnswer {
  const path = dig.path.map(survey.plane.toXy);
  const outline = boxAround(path);
  if (!outline) return { findings: [], overhead: [] };
  const reach: Box = growBox(outline, dig.withinM + dig.errorM);
  const look = (things: Iterable<BuriedThing>): DigFinding[] =>
    [...things]
      .flatMap((thing) => findingOf(thing, path, reach, dig, survey) ?? [])
      .sort((p, q) => p.distanceM - q.distanceM || q.errorM - p.errorM);
  return { findings: look(buriedThings(project, survey, reach)), overhead: look(overheadLines(project, survey)) };
}

function findingOf(thing: BuriedThing, path: readonly Xy[], reach: Box, dig: Dig, survey: Survey): DigFinding | null {
  const box = boxAround(thing.path);
  if (!box || !boxesMeet(growBox(box, thing.withinM), reach)) return null;
  const gap = gapBetween(path, dig.shape, thing);
  if (!gap) return null;
  const errorM = dig.errorM + thing.withinM;
  if (gap.distanceM > dig.withinM + errorM) return null;
  return {
    thing,
    distanceM: gap.distanceM,
    nearest: gap.onSecond,
    nearestAt: survey.plane.toLonLat(gap.onSecond),
    bearingDeg: gap.distanceM >= touchingM ? xyBearingDeg(gap.onFirst, gap.onSecond) : null,
    errorM,
    overlap: gap.distanceM <= errorM,
  };
}

function gapBetween(path: readonly Xy[], shape: Dig['shape'], thing: BuriedThing): PolylineGap | null {
  const first = path[0];
  const other = thing.path[0];
  if (!first || !other) return null;
  const isArea = shape === 'area' && path.length > 2;
  if (isArea && pointInRing(other, path)) return { distanceM: 0, onFirst: other, onSecond: other };
  return polylineGap(isArea ? [...path, first] : path, thing.path);
}
