import { boxesMeet, growBox } from '../geometry/box.ts';
import { nearestOnSegment } from '../geometry/polyline.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import { xyDistanceM } from '../geometry/vector.ts';
import { keptForPair, keptWhile } from '../model/memo.ts';
import { type MeasuredPath, stationOf } from './measuredPath.ts';
import { segmentsNear } from './segmentsNear.ts';

/** A vertex that touches a path. */
export interface Touch {
  /** Station on the first path. */
  readonly aM: number;
  /** Station on the second path. */
  readonly bM: number;
  /** The vertex that touches. */
  readonly xy: Xy;
  readonly at: LonLat;
  /** How far apart the two really are. */
  readonly gapM: number;
}

/** A place on a path near a point. */
export interface NearPlace {
  readonly stationM: number;
  readonly gapM: number;
}

/**
 * The places where a path comes within `toleranceM` of a point, one for each time it passes: a vertex of the path where
 * one is near enough (the nearest), else the nearest point. `skip` leaves segments out.
 */
export function placesNear(
  geometry: MeasuredPath,
  point: Xy,
  toleranceM: number,
  skip?: (segment: number) => boolean,
): NearPlace[] {
  const places: NearPlace[] = [];
  let pass: Pass | null = null;
  for (const segment of segmentsNear(geometry, point, toleranceM)) {
    if (skip?.(segment)) continue;
    const near = nearestOnSegment(point, geometry.xy[segment]!, geometry.xy[segment + 1]!);
    if (near.distanceM > toleranceM) continue;
    if (pass && segment > pass.lastSegment + 1) {
      places.push(placeOf(pass));
      pass = null;
    }
    pass ??= { lastSegment: segment, vertex: null, inner: null };
    pass.lastSegment = segment;
    const stationM = stationOf(geometry, { segment, fraction: near.fraction });
    pass.inner = nearer(pass.inner, { stationM, gapM: near.distanceM });
    for (const vertex of [segment, segment + 1]) {
      const gapM = xyDistanceM(point, geometry.xy[vertex]!);
      if (gapM <= toleranceM) pass.vertex = nearer(pass.vertex, { stationM: geometry.stationsM[vertex]!, gapM });
    }
  }
  if (pass) places.push(placeOf(pass));
  return places;
}

interface Pass {
  lastSegment: number;
  vertex: NearPlace | null;
  inner: NearPlace | null;
}

const placeOf = ({ vertex, inner }: Pass): NearPlace => (vertex ?? inner)!;

const nearer = (a: NearPlace | null, b: NearPlace): NearPlace => (a && a.gapM <= b.gapM ? a : b);

const noTouches: readonly Touch[] = [];

/**
 * Where two paths touch: a vertex of either within `toleranceM` of the other. Paths that cross where neither has a
 * vertex do not touch. Worked out once for each pair.
 */
export const touchesBetween = keptForPair(findTouches);

/** Where a path touches itself: a vertex near a piece of it that has been further away in between. */
export const touchesOfSelf = keptWhile(findOwnTouches);

function findTouches(a: MeasuredPath, b: MeasuredPath, toleranceM: number): readonly Touch[] {
  if (!boxesMeet(growBox(a.box, toleranceM), b.box)) return noTouches;
  const touches: Touch[] = [];
  verticesNear(a, b, toleranceM, (vertex, { stationM, gapM }) => {
    touches.push({ aM: a.stationsM[vertex]!, bM: stationM, xy: a.xy[vertex]!, at: a.path[vertex]!, gapM });
  });
  verticesNear(b, a, toleranceM, (vertex, { stationM, gapM }) => {
    touches.push({ aM: stationM, bM: b.stationsM[vertex]!, xy: b.xy[vertex]!, at: b.path[vertex]!, gapM });
  });
  return withoutEchoes(touches, toleranceM);
}

function verticesNear(
  of: MeasuredPath,
  target: MeasuredPath,
  toleranceM: number,
  report: (vertex: number, place: NearPlace) => void,
): void {
  const [west, south, east, north] = growBox(target.box, toleranceM);
  for (let vertex = 0; vertex < of.xy.length; vertex++) {
    const point = of.xy[vertex]!;
    if (point[0] < west || point[0] > east || point[1] < south || point[1] > north) continue;
    for (const place of placesNear(target, point, toleranceM)) report(vertex, place);
  }
}

function findOwnTouches(path: MeasuredPath, toleranceM: number): readonly Touch[] {
  if (path.xy.length < 3) return noTouches;
  const touches: Touch[] = [];
  for (let vertex = 0; vertex < path.xy.length; vertex++) {
    const point = path.xy[vertex]!;
    const [first, last] = ownSegments(path, vertex, toleranceM);
    for (const place of placesNear(path, point, toleranceM, (segment) => segment >= first && segment <= last)) {
      const stationM = path.stationsM[vertex]!;
      const [aM, bM] = stationM < place.stationM ? [stationM, place.stationM] : [place.stationM, stationM];
      touches.push({ aM, bM, xy: point, at: path.path[vertex]!, gapM: place.gapM });
    }
  }
  return withoutEchoes(touches, toleranceM);
}

/** The segments around a vertex that belong to it: up to the first on each side that leads out of its reach. */
function ownSegments({ xy }: MeasuredPath, vertex: number, toleranceM: number): readonly [number, number] {
  let first = vertex;
  while (first > 0 && xyDistanceM(xy[first]!, xy[vertex]!) <= toleranceM) first--;
  let last = vertex;
  while (last < xy.length - 1 && xyDistanceM(xy[last]!, xy[vertex]!) <= toleranceM) last++;
  return [first, last - 1];
}

/** One touch for each meeting: of those within the tolerance of each other on both paths, the closest. */
function withoutEchoes(touches: Touch[], toleranceM: number): readonly Touch[] {
  if (touches.length < 2) return touches;
  touches.sort((s, t) => s.aM - t.aM || s.bM - t.bM);
  const kept: Touch[] = [];
  for (const touch of touches) {
    let echoOf = -1;
    for (let i = kept.length - 1; i >= 0 && touch.aM - kept[i]!.aM <= 2 * toleranceM; i--) {
      const near = touch.aM - kept[i]!.aM <= toleranceM && Math.abs(touch.bM - kept[i]!.bM) <= toleranceM;
      if (near) echoOf = i;
    }
    if (echoOf === -1) kept.push(touch);
    else if (touch.gapM < kept[echoOf]!.gapM) kept[echoOf] = touch;
  }
  return kept;
}
