import { createLocalPlane } from '../../../core/geometry/localPlane.ts';
import {
  newCrossing,
  newFenceLine,
  newGateway,
  newProperty,
  startingFenceTypes,
} from '../../../core/model/defaults.ts';
import { projectOf } from '../../../core/model/project.ts';
import type { LonLat, Thing } from '../../../core/model/things.ts';
import { workingPlane } from '../../../core/network/workingPlane.ts';
import { surveyOf } from '../../../core/registers/survey.ts';
import { buildScene, type Scene } from '../../../renderer/map/scene/buildScene.ts';

const origin: LonLat = [171.5, -43.5];
const plane = createLocalPlane(origin);

/** A place by metres east and north of the middle. */
export const at = (x: number, y: number): LonLat => plane.toLonLat([x, y]);

/** An invented scene: a square paddock F1 of 200 m with a gateway G1, a fence F2 across it, a post and an energiser. */
export function exampleScene(...more: Thing[]): Scene {
  const property = newProperty('Invented', origin);
  const f1 = newFenceLine({
    id: 'F1',
    name: 'F1',
    typeId: 'ft-2',
    path: [at(0, 0), at(200, 0), at(200, 200), at(0, 200), at(0, 0)],
  });
  const f2 = newFenceLine({ id: 'F2', name: 'F2', typeId: 'ft-2', path: [at(100, 0), at(100, 200)] });
  const g1 = newGateway({ id: 'G1', name: 'G1', lineId: 'F1', atM: 50, widthM: 4 });
  const project = projectOf([
    property,
    ...startingFenceTypes,
    f1,
    f2,
    g1,
    newCrossing('C1', g1, property.crossings),
    { kind: 'post', id: 'P1', name: 'P1', at: at(100, 0), role: 'strainer', note: '' },
    ...more,
  ]);
  return buildScene(project, surveyOf(project), workingPlane(property));
}
