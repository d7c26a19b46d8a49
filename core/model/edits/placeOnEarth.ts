import { earthAt } from '../../geometry/earth.ts';
import { createLocalPlane } from '../../geometry/localPlane.ts';
import type { Xy } from '../../geometry/types.ts';
import { xyBearingDeg, xyDistanceM } from '../../geometry/vector.ts';
import { message } from '../../words/message.ts';
import type { InGround } from '../inGroundThings.ts';
import { allThings, isKind, type Project, projectOf, propertyOf, putAll } from '../project.ts';
import type { BuiltMark, BuriedPoint, CrossingRecord, Handover, PlannedThing, RevisedThing } from '../recordThings.ts';
import type { DrawnThing, FenceLine, KeptPlan, LonLat, Thing } from '../things.ts';
import type { ByEye, Placement } from '../underlayThings.ts';
import { type Edit, firstRefusal, guarded, type Refusal, type WhyNot } from './support/edit.ts';
import { allCorners, relay } from './support/relay.ts';

/** Where a point of the drawing really is. */
export interface KnownPoint {
  /** In metres on the blank grid. */
  readonly grid: Xy;
  readonly earth: LonLat;
}

/** Either the true bearing of the grid's north there, or a second point, which gives the direction (never the scale). */
export type PlaceOnEarth = {
  readonly point: KnownPoint;
} & ({ readonly gridNorthDeg: number } | { readonly second: KnownPoint });

/** Two points may differ this much in their distance, as a share of it, before they are taken for a mistake. */
const mostMisfitShare = 0.05;

/**
 * Gives a property that was drawn on the blank grid its place on earth: the working plane is laid down anew, with the
 * named point where it is and its north turned, so that every length stays as it was (to the plane's own 1 in 10,000).
 */
export function placeOnEarth(wanted: PlaceOnEarth): Edit {
  return guarded(whyNotPlaceOnEarth(wanted), (project) => {
    const from = createLocalPlane(propertyOf(project).origin);
    const { origin, turnDeg } = newPlane(wanted);
    const onto = createLocalPlane(origin);
    const move = (at: LonLat) => onto.toLonLat(turned(from.toXy(at), turnDeg));
    return withUnderlays(laidDown(project, origin, move), move, turnDeg);
  });
}

/** `placed` (it has its place), `outOfRange`, `samePoint`, `misfit` (the two points are not as far apart as drawn). */
export function whyNotPlaceOnEarth(wanted: PlaceOnEarth): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotPlaced(project),
      () => whyNotEarth(wanted.point.earth),
      () => ('second' in wanted ? whyNotEarth(wanted.second.earth) : whyNotBearing(wanted.gridNorthDeg)),
      () => ('second' in wanted ? whyNotPair(wanted.point, wanted.second) : null),
    );
}

function whyNotPlaced(project: Project): Refusal | null {
  if (!propertyOf(project).placed) return null;
  return { code: 'placed', message: message('edits.places.placed') };
}

function whyNotEarth([lon, lat]: LonLat): Refusal | null {
  if (Math.abs(lon) <= 180 && Math.abs(lat) < 90) return null;
  return { code: 'outOfRange', message: message('edits.places.notOnEarth', { lon: `${lon}`, lat: `${lat}` }) };
}

function whyNotBearing(gridNorthDeg: number): Refusal | null {
  if (Number.isFinite(gridNorthDeg)) return null;
  return { code: 'outOfRange', message: message('edits.places.bearing', { example: 12.5 }) };
}

function whyNotPair(first: KnownPoint, second: KnownPoint): Refusal | null {
  const drawnM = xyDistanceM(first.grid, second.grid);
  const realM = earthAt(first.earth).distanceM(first.earth, second.earth);
  if (drawnM < 1 || realM < 1) {
    return { code: 'samePoint', message: message('edits.places.samePoint') };
  }
  if (Math.abs(drawnM - realM) <= mostMisfitShare * realM) return null;
  return { code: 'misfit', message: message('edits.places.misfit', { drawnM, realM }) };
}

/** The earth place of the grid's own origin, and how far the grid turns clockwise about it. */
function newPlane(wanted: PlaceOnEarth): { origin: LonLat; turnDeg: number } {
  const { grid, earth } = wanted.point;
  const { bearingDeg, destination } = earthAt(earth);
  const northDeg =
    'second' in wanted
      ? bearingDeg(earth, wanted.second.earth) - xyBearingDeg(grid, wanted.second.grid)
      : wanted.gridNorthDeg;
  const awayM = xyDistanceM([0, 0], grid);
  if (awayM === 0) return { origin: earth, turnDeg: northDeg };
  const origin = destination(earth, xyBearingDeg(grid, [0, 0]) + northDeg, awayM);
  return { origin, turnDeg: bearingDeg(origin, earth) - xyBearingDeg([0, 0], grid) };
}

/** A point turned clockwise about the origin. */
function turned([x, y]: Xy, clockwiseDeg: number): Xy {
  const angle = (clockwiseDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [x * cos + y * sin, y * cos - x * sin];
}

/** Everything in its new place; also what is kept of earlier plans. */
function laidDown(project: Project, origin: LonLat, move: (at: LonLat) => LonLat): Project {
  const property = { ...propertyOf(project), origin, placed: true };
  const things = [...allThings(project)].filter(({ kind }) => kind !== 'property' && kind !== 'fenceLine');
  const plans = [...project.keptPlan.values()].map((plan): KeptPlan => {
    const laid = laidDown(projectOf(plan.things), origin, move);
    return { ...plan, things: [...(allThings(laid) as Generator<DrawnThing>), ...ofNewerKinds(plan.things)] };
  });
  const handovers = [...project.handover.values()].map((handover): Handover => {
    const laid = laidDown(projectOf(handover.things), origin, move);
    return { ...handover, things: [...(allThings(laid) as Generator<RevisedThing>), ...ofNewerKinds(handover.things)] };
  });
  const movedThings = things.flatMap((thing) => moved(thing, move) ?? []);
  const placed = putAll(project, [property, ...movedThings, ...plans, ...handovers]);
  return [...project.fenceLine.values()].reduce((now, line) => relayed(now, line, move), placed);
}

/** What is of a kind that only a newer version knows stays as it is. */
function ofNewerKinds<T extends Thing>(things: readonly T[]): T[] {
  return things.filter(({ kind }) => !isKind(kind));
}

function moved(thing: Thing, move: (at: LonLat) => LonLat): Thing | null {
  if (thing.kind === 'buriedPoint') return movedPoint(thing, move);
  if (thing.kind === 'crossingRecord') return movedRecord(thing, move);
  if (thing.kind === 'inGround') return { ...thing, was: movedWas(thing.was, move) };
  if (thing.kind === 'builtMark') return movedMark(thing, move);
  if ('at' in thing) return { ...thing, at: move(thing.at) };
  if ('path' in thing) return { ...thing, path: thing.path.map(move) } as Thing;
  return null;
}

function movedPoint(point: BuriedPoint, move: (at: LonLat) => LonLat): BuriedPoint {
  return { ...point, ties: point.ties.map((tie) => ({ ...tie, postAt: move(tie.postAt) })) };
}

function movedRecord<R extends CrossingRecord>(record: R, move: (at: LonLat) => LonLat): R {
  const { opening } = record;
  if (!opening) return record;
  const [startPostAt, endPostAt] = [move(opening.startPostAt), move(opening.endPostAt)];
  return { ...record, opening: { ...opening, startPostAt, endPostAt } };
}

function movedWas(was: InGround['was'], move: (at: LonLat) => LonLat): InGround['was'] {
  switch (was.what) {
    case 'crossing':
      return {
        ...was,
        record: movedRecord(was.record, move),
        points: was.points.map((point) => movedPoint(point, move)),
        mark: was.mark && movedMark(was.mark, move),
      };
    case 'leadOut': {
      const leadOut = { ...was.leadOut, path: was.leadOut.path.map(move) };
      return { ...was, leadOut, mark: was.mark && movedMark(was.mark, move) };
    }
    case 'earthField': {
      const earthField = { ...was.earthField, at: move(was.earthField.at) };
      return { ...was, earthField, mark: was.mark && movedMark(was.mark, move) };
    }
  }
}

function movedMark(mark: BuiltMark, move: (at: LonLat) => LonLat): BuiltMark {
  return { ...mark, planned: mark.planned && movedPlan(mark.planned, move) };
}

function movedPlan({ thing, places }: PlannedThing, move: (at: LonLat) => LonLat): PlannedThing {
  return { thing: (moved(thing, move) ?? thing) as PlannedThing['thing'], places: places.map(move) };
}

function relayed(project: Project, line: FenceLine, move: (at: LonLat) => LonLat): Project {
  return relay(project, line, line.path.map(move), allCorners(line.path.length));
}

/** Maps and pictures underneath come along. */
function withUnderlays(project: Project, move: (at: LonLat) => LonLat, turnDeg: number): Project {
  const laid = [...project.underlay.values()].map((underlay) => {
    const { placement } = underlay;
    return placement ? { ...underlay, placement: movedPlacement(placement, move, turnDeg) } : underlay;
  });
  return putAll(project, laid);
}

function movedPlacement(placement: Placement, move: (at: LonLat) => LonLat, turnDeg: number): Placement {
  switch (placement.by) {
    case 'eye':
      return movedByEye(placement, move, turnDeg);
    case 'distance':
      return { ...placement, at: move(placement.at), bearingDeg: placement.bearingDeg + turnDeg };
    case 'points':
      return {
        ...placement,
        points: placement.points.map(({ pixel, at }) => ({ pixel, at: move(at) })),
        before: movedByEye(placement.before, move, turnDeg),
      };
    case 'coordinates':
      return { ...placement, at: placement.at.map(move) };
  }
}

function movedByEye(placement: ByEye, move: (at: LonLat) => LonLat, turnDeg: number): ByEye {
  return { ...placement, at: move(placement.at), upDeg: placement.upDeg + turnDeg };
}
