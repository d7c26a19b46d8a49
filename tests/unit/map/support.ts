import { createLocalPlane } from '../../../core/geometry/localPlane.ts';
import {
  newCrossing,
  newFenceLine,
  newGateway,
  newProperty,
  startingFenceTypes,
} from '../../../core/model/defaults.ts';
import { EditRefused } from '../../../core/model/edits/support/edit.ts';
import { projectOf } from '../../../core/model/project.ts';
import type { LonLat, Thing } from '../../../core/model/things.ts';
import { workingPlane } from '../../../core/shapes/workingPlane.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { figures } from '../../../core/words/figures.ts';
import { chooseSnap, snapTargets } from '../../../renderer/map/interaction/snapping.ts';
import type { MapEdit, MapInput } from '../../../renderer/map/mapTypes.ts';
import { buildScene, type Scene } from '../../../renderer/map/scene/buildScene.ts';
import type { Pointer, ToolContext } from '../../../renderer/map/tools/tool.ts';

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
    ...startingFenceTypes(),
    f1,
    f2,
    g1,
    newCrossing('C1', g1, property.crossings),
    { kind: 'post', id: 'P1', name: 'P1', at: at(100, 0), role: 'strainer', note: '' },
    ...more,
  ]);
  return buildScene(project, surveyOf(project), workingPlane(property));
}

/** The map around a tool, without a map: 1 m is 2 pixels, edits are kept in `made`, refusals in `refused`. */
export function exampleContext(scene: Scene, change: Partial<MapInput> = {}) {
  const made: MapEdit[] = [];
  const refused: string[] = [];
  const chosen: string[][] = [];
  let count = 0;
  const input: MapInput = {
    project: scene.project,
    survey: scene.survey,
    findings: [],
    workspace: 'draw',
    chosen: [],
    pointed: null,
    lit: [],
    plan: null,
    voltage: null,
    units: 'metric',
    theme: 'light',
    ...change,
  };
  const context: ToolContext = {
    input: () => input,
    words: () => figures(input.units).words.window.map,
    scene: () => scene,
    view: () => ({ westM: -300, northM: 300, pxPerM: 2, widthPx: 1200, heightPx: 1200 }),
    events: {
      onChoose: (ids) => void chosen.push([...ids]),
      onPoint: () => {},
      onEdit: async () => true,
      newId: (kind) => `${kind}-${++count}`,
    },
    snap: (pointer, except = null) =>
      pointer.alt ? null : chooseSnap(pointer.xy, snapTargets(scene, pointer.xy, 7, except), 7),
    toLonLat: scene.plane.toLonLat,
    toXy: scene.plane.toXy,
    async commit(edit) {
      try {
        edit.apply(scene.project);
      } catch (error) {
        if (!(error instanceof EditRefused)) throw error;
        refused.push(error.message);
        return false;
      }
      made.push(edit);
      return true;
    },
    refuse: (text) => void refused.push(text),
    invalidate: () => {},
    setTool: () => {},
    setCursor: () => {},
  };
  return { context, made, refused, chosen };
}

export const pointer = (x: number, y: number, held: Partial<Pointer> = {}): Pointer => ({
  xy: [x, y],
  shift: false,
  alt: false,
  ctrl: false,
  byKeyboard: false,
  ...held,
});

/** As much of a key press as the tools look at. */
export const key = (name: string, held: Partial<KeyboardEvent> = {}): KeyboardEvent =>
  ({ key: name, shiftKey: false, ctrlKey: false, altKey: false, metaKey: false, ...held }) as KeyboardEvent;
