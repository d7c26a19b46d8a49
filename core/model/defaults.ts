import type {
  Crossing,
  CrossingDefaults,
  DivideSettings,
  EarthField,
  Energiser,
  FenceLine,
  FenceType,
  Gateway,
  LonLat,
  PowerSettings,
  Property,
} from './things.ts';

/**
 * Depths, pipe bore: common practice, no source. The bow of a quarter of the opening's width is an assumption of this
 * project, and so are riser height, tails, allowance and the pipe's least bend radius (about 20 times the outer
 * diameter of 19 mm low-density pipe); all of them can be changed, and every screen that shows them says so.
 */
export const crossingDefaults: CrossingDefaults = {
  bowShare: 0.25,
  depthM: 0.3,
  vehicleDepthM: 0.45,
  riserHeightM: 0.9,
  tailM: 1,
  allowanceM: 0.3,
  pipeBoreMm: 19,
  minBendRadiusM: 0.5,
  earthConnectionM: 0.3,
};

/** Limits and relative costs as the design sets them; common practice, no source. */
export const divideDefaults: DivideSettings = {
  maxSectionM: 5000,
  maxGateways: null,
  costs: { gateway: 1, takeOff: 1.3, alongRun: 2 },
};

/** 4 kV: where the pressure of stock is high; common practice, no source. 100 ohm m: a middling loam. */
export const powerDefaults: PowerSettings = { growth: 'light', stockMinimumV: 4000, soilOhmM: 100 };

/** Where a property stands that has no place on earth yet: on the equator, where a degree is plainest. */
export const unplacedOrigin: LonLat = [0, 0];

export function newProperty(name: string, origin: LonLat | null = null): Property {
  return {
    kind: 'property',
    id: 'property',
    name,
    note: '',
    invented: false,
    origin: origin ?? unplacedOrigin,
    placed: origin !== null,
    units: 'metric',
    snapToleranceM: 0.3,
    divide: divideDefaults,
    power: powerDefaults,
    crossings: crossingDefaults,
  };
}

/** The fence types that a new property starts with; ordinary makes of fence, common practice, no source. */
export const startingFenceTypes: readonly FenceType[] = [
  newFenceType('ft-2', 'Two live wires', { liveWires: 2, postSpacingM: 10 }),
  newFenceType('ft-1', 'One live wire', { liveWires: 1, postSpacingM: 12 }),
  newFenceType('ft-4', 'Four wires, two live, one earth', {
    liveWires: 2,
    earthWires: 1,
    plainWires: 1,
    postSpacingM: 6,
  }),
  newFenceType('ft-boundary', 'Boundary, seven wires, two live, one earth', {
    liveWires: 2,
    earthWires: 1,
    plainWires: 4,
    postSpacingM: 4,
  }),
];

export function newFenceType(id: string, name: string, figures: Partial<FenceType> = {}): FenceType {
  return {
    kind: 'fenceType',
    id,
    name,
    liveWires: 1,
    earthWires: 0,
    plainWires: 0,
    barbedWires: 0,
    wireId: 'steel-2.5',
    postSpacingM: 10,
    note: '',
    ...figures,
  };
}

export function newFenceLine(line: Pick<FenceLine, 'id' | 'name' | 'typeId' | 'path'> & Partial<FenceLine>): FenceLine {
  return { kind: 'fenceLine', live: true, growth: null, status: 'planned', note: '', ...line };
}

export function newGateway(gateway: Pick<Gateway, 'id' | 'name' | 'lineId' | 'atM'> & Partial<Gateway>): Gateway {
  return {
    kind: 'gateway',
    widthM: 4.2,
    leaves: 1,
    hungFrom: 'start',
    opens: 'left',
    vehicles: false,
    status: 'planned',
    note: '',
    ...gateway,
  };
}

/** The crossing that a gateway is given when it is placed. */
export function newCrossing(id: string, gateway: Gateway, defaults: CrossingDefaults): Crossing {
  return {
    kind: 'crossing',
    id,
    gatewayId: gateway.id,
    method: 'buried',
    bowM: null,
    bowSide: 'left',
    depthM: gateway.vehicles ? defaults.vehicleDepthM : defaults.depthM,
    riserHeightM: defaults.riserHeightM,
    tailM: defaults.tailM,
    allowanceM: defaults.allowanceM,
    pipeBoreMm: defaults.pipeBoreMm,
    minBendRadiusM: defaults.minBendRadiusM,
    cableId: 'cable-steel-2.5',
    earth: true,
    earthConnectionM: defaults.earthConnectionM,
    sealed: null,
    status: gateway.status,
    note: '',
  };
}

/** An energiser until its label is read: figures of a middling mains unit, invented. */
export function newEnergiser(id: string, name: string, at: LonLat): Energiser {
  return {
    kind: 'energiser',
    id,
    name,
    at,
    openCircuitV: 8000,
    into500OhmV: 6000,
    storedJ: null,
    outputJ: null,
    status: 'planned',
    note: '',
  };
}

/** Three rods of 1.8 m, about one rod length and more apart; common practice, no source. */
export function newEarthField(id: string, energiserId: string, at: LonLat): EarthField {
  return {
    kind: 'earthField',
    id,
    energiserId,
    at,
    rods: 3,
    rodLengthM: 1.8,
    rodDiameterMm: 16,
    spacingM: 3,
    status: 'planned',
    note: '',
  };
}
