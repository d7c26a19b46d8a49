import { type Box, boxesMeet, boxOfSegment, growBox } from '../geometry/plane/box.ts';
import type { Xy } from '../geometry/types.ts';
import type { Project } from '../model/project.ts';
import type { LonLat, Service, ServiceKind } from '../model/things.ts';
import { isPlaceOnEarth } from '../network/workingPlane.ts';
import type { Survey } from '../registers/types.ts';
import { allCrossings } from './allCrossings.ts';
import { assumedM, type Basis } from './certainty.ts';
import type { Course } from './courses.ts';
import type { CrossingAsBuilt } from './crossingAsBuilt.ts';
import { type CrossingDepth, depthOf } from './depth.ts';
import { isInTheGround } from './inTheGround.ts';

/** Something that lies in the ground, is planned to, or hangs over it. */
export interface BuriedThing {
  readonly kind: 'crossing' | 'leadOut' | 'earthField' | 'service';
  /** Of the thing itself; of a crossing, its gateway's. */
  readonly id: string;
  /** "crossing under G4", "lead-out L1", "water pipe Main". */
  readonly name: string;
  /** Every way it may lie, each with its own error; a path of one vertex is a point. */
  readonly ways: readonly Course[];
  /** Null: nothing is known of it. */
  readonly depth: CrossingDepth | null;
  readonly basis: Basis;
  /** False: only planned, so it does not lie there as far as the file knows. */
  readonly inGround: boolean;
}

export const serviceWords: Readonly<Record<ServiceKind, string>> = {
  powerLine: 'power line',
  waterPipe: 'water pipe',
  gasPipe: 'gas pipe',
  dataCable: 'data cable',
  drain: 'drain',
  road: 'road',
  path: 'path',
  creek: 'creek',
  floodZone: 'flood zone',
  earthElectrode: 'earth electrode',
};

/** Everything buried, or planned to be, that is in the file; of crossings only those whose gateway lies in or near the box. */
export function* buriedThings(project: Project, survey: Survey, near: Box | null = null): Generator<BuriedThing> {
  const gatewayIds = [...survey.crossings.keys()].filter((id) => {
    const shape = survey.gateways.get(id);
    return shape && (!near || boxesMeet(growBox(boxOfSegment(shape.startPost, shape.endPost), mostStrayM), near));
  });
  for (const crossing of allCrossings(project, survey, gatewayIds).values()) yield crossingThing(crossing);
  const drawn = { depth: null, basis: 'drawn' } as const;
  for (const leadOut of project.leadOut.values()) {
    const { id, name, path, buried } = leadOut;
    if (!buried) continue;
    const ways = [{ path: toPlane(path, survey), withinM: assumedM.drawnService }];
    const inGround = isInTheGround(project, leadOut);
    yield { kind: 'leadOut', id, name: `lead-out ${name}`, ways, ...drawn, inGround };
  }
  for (const field of project.earthField.values()) {
    const { id, at, energiserId, rods, spacingM } = field;
    const name = `earth stakes of ${project.energiser.get(energiserId)?.name ?? 'an energiser'}`;
    // Only the field's middle is drawn; which way its row of rods runs is not.
    const withinM = assumedM.drawnService + ((rods - 1) * spacingM) / 2;
    const ways = [{ path: toPlane([at], survey), withinM }];
    yield { kind: 'earthField', id, name, ways, ...drawn, inGround: isInTheGround(project, field) };
  }
  for (const service of project.service.values()) {
    if (service.buried || service.what === 'earthElectrode') yield serviceThing(service, survey);
  }
}

/** A crossing that was recorded may lie this far from its gateway as drawn. */
const mostStrayM = 60;

/** A crossing as a thing to keep clear of: every course, and every place of a point that they pass by. */
export function crossingThing(crossing: CrossingAsBuilt): BuriedThing {
  const { figures, courses, spots, certainty, inGround } = crossing;
  return {
    kind: 'crossing',
    id: figures.gateway.id,
    name: `crossing under ${figures.gateway.name}`,
    ways: [...courses, ...spots.map(({ xy, withinM }) => ({ path: [xy], withinM }))],
    depth: depthOf(crossing),
    basis: certainty.basis,
    inGround,
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
    name: `${serviceWords[what]} ${name}`.trim(),
    ways: [{ path: toPlane(path, survey), withinM: assumedM.drawnService }],
    depth: null,
    basis: 'drawn',
    inGround: true,
  };
}

function toPlane(path: readonly LonLat[], { plane }: Survey): Xy[] {
  return path.filter(isPlaceOnEarth).map((at) => plane.toXy(at));
}
