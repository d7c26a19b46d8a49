import { type Box, boxAround, boxesMeet, growBox } from '../geometry/box.ts';
import { type PolylineGap, polylineGap } from '../geometry/polyline.ts';
import { pointInRing } from '../geometry/ring.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import { xyBearingDeg } from '../geometry/vector.ts';
import type { Project } from '../model/project.ts';
import type { Survey } from '../survey/types.ts';
import { type BuriedThing, buriedThings, overheadLines } from './buriedThings.ts';
import type { Course } from './courses.ts';

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
  /**
   * Of all the ways that the thing may lie, the one that comes worst: from the edge of the dig; 0 where it crosses it or
   * lies in it.
   */
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
  /** What is in the ground, nearest first. */
  readonly findings: readonly DigFinding[];
  /** What is planned there and not in the ground as far as the file knows; nothing that can be hit. Nearest first. */
  readonly planned: readonly DigFinding[];
  /** Power lines overhead within the distance, for machines that reach up. */
  readonly overhead: readonly DigFinding[];
}

/** All findings in the order in which screen, sketch and map number them. */
export function numbered({ findings, planned, overhead }: DigAnswer) {
  return [...findings, ...planned, ...overhead].map((finding, i) => ({
    finding,
    number: String(i + 1),
    overhead: i >= findings.length + planned.length,
  }));
}

/** Nearer than this a thing is met. */
const touchingM = 0.005;

/**
 * What lies buried near a dig, of all that is in the file. A thing is named when it may be within the distance: its
 * error and the dig's own count against the distance. What may lie in several places counts at each of them.
 */
export function digCheck(project: Project, survey: Survey, dig: Dig): DigAnswer {
  const path = dig.path.map(survey.plane.toXy);
  const outline = boxAround(path);
  if (!outline) return { findings: [], planned: [], overhead: [] };
  const reach: Box = growBox(outline, dig.withinM + dig.errorM);
  const look = (things: Iterable<BuriedThing>): DigFinding[] =>
    [...things]
      .flatMap((thing) => findingOf(thing, path, reach, dig, survey) ?? [])
      .sort((p, q) => p.distanceM - q.distanceM || q.errorM - p.errorM);
  const buried = look(buriedThings(project, survey, reach));
  return {
    findings: buried.filter(({ thing }) => thing.inGround),
    planned: buried.filter(({ thing }) => !thing.inGround),
    overhead: look(overheadLines(project, survey)),
  };
}

function findingOf(thing: BuriedThing, path: readonly Xy[], reach: Box, dig: Dig, survey: Survey): DigFinding | null {
  const ways = thing.ways.flatMap((way) => wayOf(way, path, reach, dig) ?? []);
  const worst = ways.sort((p, q) => p.clearM - q.clearM || p.gap.distanceM - q.gap.distanceM)[0];
  if (!worst) return null;
  const { gap, errorM, clearM } = worst;
  return {
    thing,
    distanceM: gap.distanceM,
    nearest: gap.onSecond,
    nearestAt: survey.plane.toLonLat(gap.onSecond),
    bearingDeg: gap.distanceM >= touchingM ? xyBearingDeg(gap.onFirst, gap.onSecond) : null,
    errorM,
    overlap: thing.inGround && clearM <= 0,
  };
}

/** How one way that a thing may lie comes to the dig; null where it is too far off to be named. */
function wayOf(way: Course, path: readonly Xy[], reach: Box, dig: Dig) {
  const box = boxAround(way.path);
  if (!box || !boxesMeet(growBox(box, way.withinM), reach)) return null;
  const gap = gapBetween(path, dig.shape, way.path);
  if (!gap) return null;
  const errorM = dig.errorM + way.withinM;
  // What is left between them when both are as far off as they can be.
  const clearM = gap.distanceM - errorM;
  return clearM > dig.withinM ? null : { gap, errorM, clearM };
}

function gapBetween(path: readonly Xy[], shape: Dig['shape'], way: readonly Xy[]): PolylineGap | null {
  const first = path[0];
  const other = way[0];
  if (!first || !other) return null;
  const isArea = shape === 'area' && path.length > 2;
  if (isArea && pointInRing(other, path)) return { distanceM: 0, onFirst: other, onSecond: other };
  return polylineGap(isArea ? [...path, first] : path, way);
}
