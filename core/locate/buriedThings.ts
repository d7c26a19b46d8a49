import { type Box, boxesMeet, boxOfSegment, growBox } from '../geometry/box.ts';
import type { Xy } from '../geometry/types.ts';
import { xyDistanceM } from '../geometry/vector.ts';
import { largestOf } from '../model/extremes.ts';
import type { Fate } from '../model/inGroundThings.ts';
import type { Project } from '../model/project.ts';
import type { BuriedPoint } from '../model/recordThings.ts';
import type { EarthField, LonLat, Service } from '../model/things.ts';
import type { CrossingFigures, GatewayShape } from '../shapes/types.ts';
import { isPlaceOnEarth } from '../shapes/workingPlane.ts';
import type { Survey } from '../survey/types.ts';
import { type Message, message } from '../words/message.ts';
import { allCrossings } from './allCrossings.ts';
import { alsoInTrench } from './alsoInTrench.ts';
import { assumedM, type Basis } from './certainty.ts';
import type { Course } from './courses.ts';
import type { CrossingAsBuilt } from './crossingAsBuilt.ts';
import { pointsOf, recordOf } from './crossingSource.ts';
import { type CrossingDepth, depthOf } from './depth.ts';
import { type LeftInGround, leftInGround } from './inGround/leftInGround.ts';
import { fateInShort } from './inGround/leftWords.ts';
import { isInTheGround } from './inTheGround.ts';
import { keptPostName } from './tieFrom.ts';
import { placesByItself, sureFactor } from './ties.ts';

/** Something that lies in the ground, is planned to, or hangs over it. */
export interface BuriedThing {
  readonly kind: 'crossing' | 'leadOut' | 'earthField' | 'service' | 'inGround' | 'lostPoint';
  /** Of the thing itself; of a crossing, its gateway's. */
  readonly id: string;
  /** "crossing under G4", "lead-out L1", "water pipe Main". */
  readonly name: Message;
  /** Every way it may lie, each with its own error; a path of one vertex is a point. */
  readonly ways: readonly Course[];
  /** Null: nothing is known of it. */
  readonly depth: CrossingDepth | null;
  /** What else lies in its trench; null where nothing is noted. */
  readonly beside: Message | null;
  readonly basis: Basis;
  /** False: only planned, so it does not lie there as far as the file knows. */
  readonly inGround: boolean;
  /** Of what is no longer drawn. */
  readonly fate: Fate | null;
}

/** Everything buried, or planned to be, that is in the file; of crossings only those whose gateway lies in or near the box. */
export function* buriedThings(project: Project, survey: Survey, near: Box | null = null): Generator<BuriedThing> {
  const gatewayIds = [...survey.crossings].flatMap(([id, figures]) => {
    const shape = survey.gateways.get(id);
    if (!shape) return [];
    return !near || mayMeet(project, survey, figures, shape, near) ? [id] : [];
  });
  for (const crossing of allCrossings(project, survey, gatewayIds).values()) yield crossingThing(crossing);
  const drawn = { depth: null, beside: null, basis: 'drawn', fate: null } as const;
  for (const leadOut of project.leadOut.values()) {
    const { id, name, path, buried } = leadOut;
    if (!buried) continue;
    const ways = [{ path: toPlane(path, survey), withinM: assumedM.drawnService }];
    const inGround = isInTheGround(project, leadOut);
    yield { kind: 'leadOut', id, name: message('locate.buried.leadOut', { name }), ways, ...drawn, inGround };
  }
  for (const field of project.earthField.values()) {
    const { id, at, energiserId } = field;
    const name = message('locate.buried.earthStakes', {
      energiser: project.energiser.get(energiserId)?.name ?? null,
    });
    const withinM = assumedM.drawnService + rowReachM(field);
    const ways = [{ path: toPlane([at], survey), withinM }];
    yield { kind: 'earthField', id, name, ways, ...drawn, inGround: isInTheGround(project, field) };
  }
  for (const service of project.service.values()) {
    if (service.buried || service.what === 'earthElectrode') yield serviceThing(service, survey);
  }
  for (const left of leftInGround(project, survey)) if (left.thing.fate !== 'takenOut') yield leftThing(left);
  yield* lostPoints(project, survey);
}

/** Something left in the ground that is drawn no longer. */
export function leftThing({ thing, path, crossing }: LeftInGround): BuriedThing {
  const { id, name, fate, was } = thing;
  const called = message('locate.buried.left', { name, fate: fateInShort(thing) });
  const named = { kind: 'inGround', id, name: called, inGround: true, fate } as const;
  if (crossing) return { ...crossingThing(crossing), ...named };
  const strayM = was.what === 'earthField' ? rowReachM(was.earthField) : 0;
  return {
    ...named,
    ways: [{ path, withinM: assumedM.drawnService + strayM }],
    depth: null,
    beside: null,
    basis: 'drawn',
  };
}

/** Only the field's middle is drawn; which way its row of rods runs is not. */
function rowReachM({ rods, spacingM }: EarthField): number {
  return ((rods - 1) * spacingM) / 2;
}

/** A crossing of which nothing was measured further than this from the middle of its gateway ... */
const nearbyM = 12;
/** ... lies within this of the gateway: no trench bows more than twice the distance of its feet (`courses.ts`). */
const mostStrayM = 5 * nearbyM;

/** Whether a crossing has to be worked out to know how near the box it comes. */
function mayMeet(
  project: Project,
  survey: Survey,
  { crossing, bowM }: CrossingFigures,
  shape: GatewayShape,
  near: Box,
): boolean {
  if (boxesMeet(growBox(boxOfSegment(shape.startPost, shape.endPost), mostStrayM), near)) return true;
  // One whose gate has been moved since lies where its record says, however far that is.
  if (recordOf(project, crossing.id)?.opening || bowM > nearbyM) return true;
  return pointsOf(project, crossing.id).some((point) => reachM(point, shape, survey) > nearbyM);
}

/** The most that a point may lie from the middle of its gateway, by anything that was measured of it and as surely as that was. */
function reachM({ ties, offset, gps }: BuriedPoint, { startPost, centre }: GatewayShape, { plane }: Survey): number {
  const off = (place: LonLat) => (isPlaceOnEarth(place) ? xyDistanceM(plane.toXy(place), centre) : Infinity);
  return Math.max(
    offset ? Math.hypot(offset.alongM, offset.leftM) + xyDistanceM(startPost, centre) : 0,
    gps ? off(gps.lonLat) + sureFactor * gps.seM : 0,
    largestOf(ties.map(({ postAt, distanceM, seM }) => off(postAt) + distanceM + sureFactor * seM)),
  );
}

/** Whether a crossing is drawn, below ground, at a gateway that stands in a line: then it is found by itself. */
function isDrawn(project: Project, survey: Survey, crossingId: string): boolean {
  const crossing = project.crossing.get(crossingId);
  if (crossing?.method !== 'buried') return false;
  return survey.crossings.get(crossing.gatewayId)?.crossing === crossing && survey.gateways.has(crossing.gatewayId);
}

/**
 * Measured points of crossings that are drawn no longer, or not below ground, from files of a time when a crossing could
 * be deleted or taken above ground without them: where their tapes or a receiver put them.
 */
function* lostPoints(project: Project, survey: Survey): Generator<BuriedThing> {
  for (const point of project.buriedPoint.values()) {
    if (isDrawn(project, survey, point.crossingId)) continue;
    const { places, contradictory } = placesByItself(point, project, survey);
    if (places.length === 0) continue;
    const tie = point.ties[0];
    yield {
      kind: 'lostPoint',
      id: point.id,
      name: message('locate.buried.lostPoint', { post: tie ? keptPostName(tie) : null }),
      // How its trench ran is not known any more.
      ways: places.map(({ xy, withinM }) => ({ path: [xy], withinM: withinM + assumedM.drawnService })),
      depth: null,
      beside: null,
      basis: contradictory ? 'contradictory' : 'partly',
      inGround: true,
      fate: 'inUse',
    };
  }
}

/** A crossing as a thing to keep clear of: every course, and every place of a point that they pass by. */
export function crossingThing(crossing: CrossingAsBuilt): BuriedThing {
  const { figures, courses, spots, certainty, inGround, record } = crossing;
  return {
    kind: 'crossing',
    id: figures.gateway.id,
    name: message('locate.buried.crossing', { gateway: figures.gateway.name }),
    ways: [...courses, ...spots.map(({ xy, withinM }) => ({ path: [xy], withinM }))],
    depth: depthOf(crossing),
    beside: alsoInTrench(record),
    basis: certainty.basis,
    inGround,
    fate: null,
  };
}

export function* overheadLines(project: Project, survey: Survey): Generator<BuriedThing> {
  for (const service of project.service.values()) {
    if (service.what === 'powerLine' && !service.buried) yield serviceThing(service, survey);
  }
}

function serviceThing({ id, name, what, path }: Service, survey: Survey): BuriedThing {
  return {
    kind: 'service',
    id,
    name: message('locate.buried.service', { what, name }),
    ways: [{ path: toPlane(path, survey), withinM: assumedM.drawnService }],
    depth: null,
    beside: null,
    basis: 'drawn',
    inGround: true,
    fate: null,
  };
}

function toPlane(path: readonly LonLat[], { plane }: Survey): Xy[] {
  return path.filter(isPlaceOnEarth).map((at) => plane.toXy(at));
}
