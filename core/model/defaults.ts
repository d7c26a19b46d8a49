import { crossing } from '../kinds/crossing.ts';
import { defaultsOf, newThing } from '../kinds/describe.ts';
import { fenceLine } from '../kinds/fenceLine.ts';
import { fenceType } from '../kinds/fenceType.ts';
import { gateway as described } from '../kinds/gateway.ts';
import { property } from '../kinds/property.ts';
import { earthField, energiser } from '../kinds/supply.ts';
import { plainWords } from '../words/figures.ts';
import type { Texts } from '../words/message.ts';
import type {
  Crossing,
  CrossingDefaults,
  EarthField,
  Energiser,
  FenceLine,
  FenceType,
  Gateway,
  LonLat,
  Property,
} from './things.ts';

/** Where each of these comes from stands beside it in `core/kinds`. */
export const crossingDefaults = defaultsOf(property.fields).crossings as CrossingDefaults;

/** Where a property stands that has no place on earth yet: on the equator, where a degree is plainest. */
export const unplacedOrigin: LonLat = [0, 0];

export function newProperty(name: string, origin: LonLat | null = null): Property {
  return newThing(property, { name, origin: origin ?? unplacedOrigin, placed: origin !== null });
}

/**
 * The fence types that a new property starts with, called as the language has it; ordinary makes of fence, common
 * practice, no source.
 */
export function startingFenceTypes({ edits }: Texts = plainWords()): FenceType[] {
  const { fenceTypes } = edits.names;
  return [
    newFenceType('ft-2', fenceTypes.two, { liveWires: 2, postSpacingM: 10 }),
    newFenceType('ft-1', fenceTypes.one, { liveWires: 1, postSpacingM: 12 }),
    newFenceType('ft-4', fenceTypes.four, { liveWires: 2, earthWires: 1, plainWires: 1, postSpacingM: 6 }),
    newFenceType('ft-boundary', fenceTypes.boundary, { liveWires: 2, earthWires: 1, plainWires: 4, postSpacingM: 4 }),
  ];
}

export function newFenceType(id: string, name: string, figures: Partial<FenceType> = {}): FenceType {
  return newThing(fenceType, { id, name, ...figures });
}

export function newFenceLine(line: Pick<FenceLine, 'id' | 'name' | 'typeId' | 'path'> & Partial<FenceLine>): FenceLine {
  return newThing(fenceLine, line);
}

export function newGateway(gateway: Pick<Gateway, 'id' | 'name' | 'lineId' | 'atM'> & Partial<Gateway>): Gateway {
  return newThing(described, gateway);
}

/** The crossing that a gateway is given when it is placed. */
export function newCrossing(id: string, gateway: Gateway, defaults: CrossingDefaults): Crossing {
  const { bowShare: _, vehicleDepthM, ...figures } = defaults;
  return newThing(crossing, {
    ...figures,
    id,
    gatewayId: gateway.id,
    depthM: gateway.vehicles ? vehicleDepthM : defaults.depthM,
    status: gateway.status,
  });
}

/** An energiser until its label is read. */
export function newEnergiser(id: string, name: string, at: LonLat): Energiser {
  return newThing(energiser, { id, name, at });
}

/** Earth stakes until they are counted. */
export function newEarthField(id: string, energiserId: string, at: LonLat): EarthField {
  return newThing(earthField, { id, energiserId, at });
}
