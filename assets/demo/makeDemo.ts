/**
 * Makes the demo property. It is invented: no such farm exists, and it is laid in the open South Atlantic, far from any
 * land, so that it can depict none. `npm run demo:make` writes `demo-property.json` beside this file.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createLocalPlane } from '../../core/geometry/localPlane.ts';
import type { Xy } from '../../core/geometry/types.ts';
import { newEarthField, newProperty, startingFenceTypes } from '../../core/model/defaults.ts';
import { addFenceLine } from '../../core/model/edits/addFenceLine.ts';
import { addThing } from '../../core/model/edits/addThing.ts';
import { changeThing } from '../../core/model/edits/changeThing.ts';
import { drawLeadOut } from '../../core/model/edits/drawLeadOut.ts';
import { placeEnergiser } from '../../core/model/edits/placeEnergiser.ts';
import { placeGateway } from '../../core/model/edits/placeGateway.ts';
import { placePost } from '../../core/model/edits/placePost.ts';
import { placeSwitch } from '../../core/model/edits/placeSwitch.ts';
import { setCrossing } from '../../core/model/edits/setCrossing.ts';
import type { Edit, NewId } from '../../core/model/edits/support/edit.ts';
import { pathIn } from '../../core/model/edits/support/path.ts';
import { allThings, type Project, projectOf } from '../../core/model/project.ts';
import type { FenceType, LonLat, Property, SwitchPlace, Thing } from '../../core/model/things.ts';
import { nearestOn } from '../../core/shapes/measuredPath.ts';
import { curveThrough } from './curves.ts';
import * as equipment from './equipment.ts';
import type { Fence } from './fence.ts';
import { layFences } from './layout.ts';
import { paddockNames } from './paddockNames.ts';
import { recordEdits } from './records.ts';

export const demoOrigin: LonLat = [-31.5, -42.25];

const property: Property = {
  ...newProperty('Demo property', demoOrigin),
  invented: true,
  note: 'An invented farm for trying things out. It lies on made-up ground in the open ocean; no real property, person or business is shown.',
};

const fenceTypes: readonly FenceType[] = [
  ...startingFenceTypes(),
  {
    kind: 'fenceType',
    id: 'ft-old-boundary',
    name: 'Old boundary, six plain and one barbed, not live',
    liveWires: 0,
    earthWires: 0,
    plainWires: 6,
    barbedWires: 1,
    wireId: 'steel-2.5',
    postSpacingM: 4,
    note: '',
  },
  {
    kind: 'fenceType',
    id: 'ft-rails',
    name: 'Yard rails, not live',
    liveWires: 0,
    earthWires: 0,
    plainWires: 0,
    barbedWires: 0,
    wireId: 'steel-2.5',
    postSpacingM: 2.4,
    note: '',
  },
];

const plane = createLocalPlane(demoOrigin);

/** Degrees to nine decimals: a tenth of a millimetre, the same for every line that shares a vertex. */
function onEarth(xy: Xy): LonLat {
  const [lon, lat] = plane.toLonLat(xy);
  return [round(lon), round(lat)];
}

function round(degrees: number): number {
  return Math.round(degrees * 1e9) / 1e9;
}

/** Every thing of the demo property, always the same. */
export function demoThings(): Thing[] {
  const demo = new Demo(projectOf([property, ...fenceTypes]));
  const fences = layFences();
  const { centreLines: _, leadOutEnd, ...lines } = fences;
  for (const fence of Object.values(lines)) demo.drawFence(fence);
  for (const gateway of equipment.gatewaysOf(fences)) demo.openGateway(gateway);
  demo.powerUp(leadOutEnd);
  for (const xy of equipment.strainersAt(fences)) demo.do(placePost({ at: onEarth(xy), role: 'strainer' }, demo.newId));
  for (const placed of equipment.switchesOf(fences)) demo.putSwitch(placed);
  for (const { path, note = '', ...service } of equipment.servicesOf(fences, (points) => curveThrough(points, 40))) {
    demo.do(addThing({ kind: 'service', ...service, note, path: path.map(onEarth) }, demo.newId));
  }
  for (const [name, inside] of paddockNames) {
    demo.do(addThing({ kind: 'paddock', name, at: onEarth(inside), note: '' }, demo.newId));
  }
  for (const { near, ...reading } of equipment.readings) {
    demo.do(
      addThing({ kind: 'reading', at: onEarth(near), currentA: null, openSwitchIds: [], ...reading }, demo.newId),
    );
  }
  for (const edit of recordEdits(demo.project, demo.newId)) demo.do(edit);
  return [...allThings(demo.project)];
}

/** The property while it is built up, edit by edit, so that every rule of drawing holds for it. */
class Demo {
  project: Project;
  readonly #counts = new Map<string, number>();
  readonly #lineIds = new Map<Fence, string>();

  constructor(project: Project) {
    this.project = project;
  }

  readonly newId: NewId = (kind) => {
    const count = (this.#counts.get(kind) ?? 0) + 1;
    this.#counts.set(kind, count);
    return `${kind}-${count}`;
  };

  do(edit: Edit): void {
    this.project = edit(this.project);
  }

  drawFence(fence: Fence): void {
    this.do(addFenceLine({ ...fence.kind, name: fence.name, path: fence.corners.map(onEarth) }, this.newId));
    this.#lineIds.set(fence, [...this.project.fenceLine.keys()].at(-1)!);
  }

  openGateway({ fence, near, gateway, crossing }: equipment.PlacedGateway): void {
    const lineId = this.#lineIds.get(fence)!;
    const { lengthM } = pathIn(this.project, this.#pathOf(lineId));
    const halfM = (gateway.widthM ?? 4.2) / 2;
    const atM = near === 'start' ? halfM : near === 'end' ? lengthM - halfM : this.#stationNear(lineId, near);
    const { status } = fence.kind;
    this.do(placeGateway({ lineId, atM, status, ...gateway }, this.newId));
    const gatewayId = [...this.project.gateway.keys()].at(-1)!;
    if (!fence.kind.live) return;
    const sealed = status === 'built' ? true : null;
    this.do(setCrossing({ gatewayId, to: crossing ? { sealed } : null }, this.newId));
  }

  powerUp(end: Xy): void {
    const { xy, at: _, ...figures } = equipment.energiser;
    this.do(placeEnergiser({ ...figures, name: 'E1', at: onEarth(xy), status: 'built' }, this.newId));
    const path = [...equipment.leadOutVia, end];
    this.do(drawLeadOut({ energiserId: 'energiser-1', path: path.map(onEarth) }, this.newId));
    this.do(changeThing({ kind: 'leadOut', id: 'leadOut-1', to: { status: 'built' } }));
    const { id: _id, ...earthField } = newEarthField('', 'energiser-1', onEarth(equipment.earthFieldXy));
    this.do(addThing({ ...earthField, rods: 6, status: 'built' }, this.newId));
  }

  putSwitch({ at, status, note }: equipment.PlacedSwitch): void {
    this.do(placeSwitch({ place: this.#switchPlace(at), status, note, pinned: status === 'built' }, this.newId));
  }

  #switchPlace(at: equipment.PlacedSwitch['at']): SwitchPlace {
    if (at.on === 'leadOut') return { on: 'leadOut', leadOutId: 'leadOut-1' };
    const lineId = this.#lineIds.get(at.fence)!;
    if (at.on === 'lineEnd') return { on: 'lineEnd', lineId, end: at.end };
    const nearM = this.#stationNear(lineId, at.near);
    const [gateway] = [...this.project.gateway.values()]
      .filter((gateway) => gateway.lineId === lineId)
      .sort((a, b) => Math.abs(a.atM - nearM) - Math.abs(b.atM - nearM));
    return { on: 'gateway', gatewayId: gateway!.id, post: at.post };
  }

  #pathOf(lineId: string): readonly LonLat[] {
    return this.project.fenceLine.get(lineId)!.path;
  }

  /** To the millimetre. */
  #stationNear(lineId: string, xy: Xy): number {
    return Math.round(nearestOn(pathIn(this.project, this.#pathOf(lineId)), xy).stationM * 1000) / 1000;
  }
}

/** One thing to a line, so that a change of the layout shows as what it is. */
export function demoJson(): string {
  return `[\n${demoThings()
    .map((thing) => JSON.stringify(thing))
    .join(',\n')}\n]\n`;
}

if (process.argv[1] === import.meta.filename) {
  writeFileSync(join(import.meta.dirname, 'demo-property.json'), demoJson());
}
