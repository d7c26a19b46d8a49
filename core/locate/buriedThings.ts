import { type Box, boxesMeet, boxOfSegment, growBox } from '../geometry/plane/box.ts';
import type { Xy } from '../geometry/types.ts';
import type { Project } from '../model/project.ts';
import type { LonLat, Service, ServiceKind } from '../model/things.ts';
import { isPlaceOnEarth } from '../network/workingPlane.ts';
import type { Survey } from '../registers/types.ts';
import { allCrossings } from './allCrossings.ts';
import { assumedM, type Certainty, certaintyOf } from './certainty.ts';

/** Something that lies in the ground, or hangs over it. */
export interface BuriedThing {
  readonly kind: 'crossing' | 'leadOut' | 'earthField' | 'service';
  /** Of the thing itself; of a crossing, its gateway's. */
  readonly id: string;
  /** "crossing under G4", "lead-out L1", "water pipe Main". */
  readonly name: string;
  /** A path of one vertex is a point. */
  readonly path: readonly Xy[];
  readonly depthM: number | null;
  readonly withinM: number;
  readonly basis: Certainty['basis'];
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

/** Everything buried that is in the file; of crossings only those whose gateway lies in or near the box. */
export function* buriedThings(project: Project, survey: Survey, near: Box | null = null): Generator<BuriedThing> {
  const gatewayIds = [...survey.crossings.keys()].filter((id) => {
    const shape = survey.gateways.get(id);
    return shape && (!near || boxesMeet(growBox(boxOfSegment(shape.startPost, shape.endPost), mostStrayM), near));
  });
  for (const [id, crossing] of allCrossings(project, survey, gatewayIds)) {
    const { withinM, basis } = certaintyOf(crossing);
    const { gateway, crossing: drawn } = crossing.figures;
    const name = `crossing under ${gateway.name}`;
    yield { kind: 'crossing', id, name, path: crossing.path, depthM: drawn.depthM, withinM, basis };
  }
  const drawn = { depthM: null, withinM: assumedM.drawnService, basis: 'drawn' } as const;
  for (const { id, name, path, buried } of project.leadOut.values()) {
    if (buried) yield { kind: 'leadOut', id, name: `lead-out ${name}`, path: toPlane(path, survey), ...drawn };
  }
  for (const { id, at, energiserId, rods, spacingM } of project.earthField.values()) {
    const name = `earth stakes of ${project.energiser.get(energiserId)?.name ?? 'an energiser'}`;
    // Only the field's middle is drawn; which way its row of rods runs is not.
    const withinM = assumedM.drawnService + ((rods - 1) * spacingM) / 2;
    yield { kind: 'earthField', id, name, path: toPlane([at], survey), ...drawn, withinM };
  }
  for (const service of project.service.values()) {
    if (service.buried || service.what === 'earthElectrode') yield serviceThing(service, survey);
  }
}

/** A crossing that was recorded may lie this far from its gateway as drawn. */
const mostStrayM = 60;

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
    path: toPlane(path, survey),
    depthM: null,
    withinM: assumedM.drawnService,
    basis: 'drawn',
  };
}

function toPlane(path: readonly LonLat[], { plane }: Survey): Xy[] {
  return path.filter(isPlaceOnEarth).map((at) => plane.toXy(at));
}
