import { createLocalPlane } from '../../core/geometry/localPlane.ts';
import type { LonLat, Xy } from '../../core/geometry/types.ts';
import { newCrossing, newFenceLine, newGateway, newProperty, startingFenceTypes } from '../../core/model/defaults.ts';
import { type Project, projectOf } from '../../core/model/project.ts';
import type {
  Crossing,
  CutOutSwitch,
  Energiser,
  FenceLine,
  Gateway,
  LeadOut,
  PaddockName,
  Post,
  Property,
  SwitchCandidatePlace,
  SwitchPlace,
  SwitchRule,
  Thing,
} from '../../core/model/things.ts';

/**
 * Small invented properties for tests, drawn in metres east and north of `origin`.
 */
export const origin: LonLat = [172.5, -43.5];
const plane = createLocalPlane(origin);

/** A place in degrees from metres east and north of the origin. */
export const at = (xy: Xy): LonLat => plane.toLonLat(xy);

export function property(changes: Partial<Property> = {}): Property {
  return { ...newProperty('Invented test property', origin), invented: true, ...changes };
}

const fenceTypes = startingFenceTypes();

/** A project of these things, with fence types and a property unless one is given. */
export function drawing(...things: readonly (Thing | readonly Thing[])[]): Project {
  return projectOf([property(), ...fenceTypes, ...things.flat()]);
}

/** A fence line with two live wires through these points. */
export function line(id: string, points: readonly Xy[], changes: Partial<FenceLine> = {}): FenceLine {
  return newFenceLine({ id, name: id, typeId: 'ft-2', path: points.map(at), ...changes });
}

/** A line that ends where it began. */
export function ring(id: string, points: readonly Xy[], changes: Partial<FenceLine> = {}): FenceLine {
  return line(id, [...points, points[0]!], changes);
}

export function gateway(id: string, lineId: string, atM: number, changes: Partial<Gateway> = {}): Gateway {
  return newGateway({ id, name: id, lineId, atM, widthM: 4, ...changes });
}

/** A gateway with a crossing called `X-` and its id. */
export function bridgedGateway(
  id: string,
  lineId: string,
  atM: number,
  changes: Partial<Gateway> = {},
): [Gateway, Crossing] {
  const made = gateway(id, lineId, atM, changes);
  return [made, newCrossing(`X-${id}`, made, property().crossings)];
}

export function cutOut(id: string, place: SwitchPlace, changes: Partial<CutOutSwitch> = {}): CutOutSwitch {
  return {
    kind: 'switch',
    id,
    name: id,
    place,
    normally: 'closed',
    pinned: false,
    status: 'planned',
    note: '',
    ...changes,
  };
}

export const gateSwitch = (id: string, gatewayId: string, post: 'start' | 'end', changes: Partial<CutOutSwitch> = {}) =>
  cutOut(id, { on: 'gateway', gatewayId, post }, changes);

export const endSwitch = (id: string, lineId: string, end: 'start' | 'end', changes: Partial<CutOutSwitch> = {}) =>
  cutOut(id, { on: 'lineEnd', lineId, end }, changes);

export const lineSwitch = (id: string, lineId: string, atM: number, changes: Partial<CutOutSwitch> = {}) =>
  cutOut(id, { on: 'line', lineId, atM }, changes);

export function energiser(id: string, xy: Xy, changes: Partial<Energiser> = {}): Energiser {
  return {
    kind: 'energiser',
    id,
    name: id,
    at: at(xy),
    openCircuitV: 9000,
    into500OhmV: 6000,
    storedJ: 8,
    outputJ: 6,
    status: 'planned',
    note: '',
    ...changes,
  };
}

export function leadOut(
  id: string,
  energiserId: string,
  points: readonly Xy[],
  changes: Partial<LeadOut> = {},
): LeadOut {
  return {
    kind: 'leadOut',
    id,
    name: id,
    energiserId,
    path: points.map(at),
    cableId: 'cable-steel-2.5',
    buried: true,
    status: 'planned',
    note: '',
    ...changes,
  };
}

export function strainer(id: string, xy: Xy, role: Post['role'] = 'strainer'): Post {
  return { kind: 'post', id, name: id, at: at(xy), role, note: '' };
}

export function paddockName(id: string, name: string, xy: Xy): PaddockName {
  return { kind: 'paddock', id, name, at: at(xy), note: '' };
}

export const rule = (id: string, word: SwitchRule['rule']): SwitchRule => ({ kind: 'switchRule', id, rule: word });

export function addedPlace(id: string, lineId: string, atM: number, cost: number | null = null): SwitchCandidatePlace {
  return { kind: 'switchCandidate', id, lineId, atM, cost };
}
