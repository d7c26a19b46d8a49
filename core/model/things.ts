/**
 * Everything a project file holds, as plain frozen data. Positions are WGS 84 degrees, `[lon, lat]`; a place along a
 * fence line is a geodesic distance in metres from the line's first vertex (`atM`). Lengths, areas, sections and
 * voltages are never stored here: they are computed.
 */

/** Longitude and latitude in degrees, WGS 84. */
export type LonLat = readonly [lon: number, lat: number];

/** Planned, or really there. */
export type Status = 'planned' | 'built';

/** One of a line's two ends: where it was begun, and where it was finished. */
export type LineEnd = 'start' | 'end';

/** How much grows against the wires; each class's leakage is in `core/electrical`. `null` takes the property's. */
export type Growth = 'clean' | 'light' | 'heavy' | { readonly leakageOhmKm: number };

/** The property itself and the figures that hold for all of it. There is exactly one, with id `property`. */
export interface Property {
  readonly kind: 'property';
  readonly id: 'property';
  readonly name: string;
  readonly note: string;
  /** True for an invented example; every sheet then says so. */
  readonly invented: boolean;
  /** Centre of the working plane. */
  readonly origin: LonLat;
  /** False: drawn on the blank grid, with no place on earth yet (`origin` is then a stand-in). */
  readonly placed: boolean;
  readonly units: 'metric' | 'imperial';
  /** Ends nearer than this join. */
  readonly snapToleranceM: number;
  readonly divide: DivideSettings;
  readonly power: PowerSettings;
  readonly crossings: CrossingDefaults;
}

export interface DivideSettings {
  /** Longest fence length that a section may have. */
  readonly maxSectionM: number;
  /** Most gateways that a section may have, or no such limit. */
  readonly maxGateways: number | null;
  /** What a switch costs, relative to one at a gateway. */
  readonly costs: { readonly gateway: number; readonly takeOff: number; readonly alongRun: number };
}

export interface PowerSettings {
  readonly growth: Growth;
  /** Least peak voltage that holds the stock. */
  readonly stockMinimumV: number;
  /** Resistivity of the soil at the earth field. */
  readonly soilOhmM: number;
}

/** What a new crossing is given. Sources and assumptions: see `defaults.ts`. */
export interface CrossingDefaults {
  /** The bow (sagitta) of the trench as a share of the opening's width. */
  readonly bowShare: number;
  readonly depthM: number;
  /** Depth where vehicles pass. */
  readonly vehicleDepthM: number;
  /** Height of the riser pipe above ground. */
  readonly riserHeightM: number;
  /** Spare cable beyond each end of the pipe. */
  readonly tailM: number;
  /** Added to the pipe for bends and trimming. */
  readonly allowanceM: number;
  readonly pipeBoreMm: number;
  readonly minBendRadiusM: number;
  /** Height above ground at which the earth cable is joined. */
  readonly earthConnectionM: number;
}

export interface FenceType {
  readonly kind: 'fenceType';
  readonly id: string;
  readonly name: string;
  readonly liveWires: number;
  readonly earthWires: number;
  /** Barbed wires in the fence; they are never electrified. */
  readonly barbedWires: number;
  /** Conductor of its live wires: id of a library conductor or of a `conductor` thing. */
  readonly wireId: string;
  readonly postSpacingM: number;
  readonly note: string;
}

/** A drawn line of fence. A closed one repeats its first vertex at the end. */
export interface FenceLine {
  readonly kind: 'fenceLine';
  readonly id: string;
  readonly name: string;
  readonly typeId: string;
  readonly live: boolean;
  readonly path: readonly LonLat[];
  readonly growth: Growth | null;
  readonly status: Status;
  readonly note: string;
}

/** A point that does not move: tapes are measured from it, and a line that runs over a strainer can be cut there. */
export interface Post {
  readonly kind: 'post';
  readonly id: string;
  readonly name: string;
  readonly at: LonLat;
  readonly role: 'strainer' | 'angle' | 'other';
  readonly note: string;
}

/** An opening in a fence line. Its start post stands at `atM - widthM / 2`, its end post at `atM + widthM / 2`. */
export interface Gateway {
  readonly kind: 'gateway';
  readonly id: string;
  readonly name: string;
  readonly lineId: string;
  /** Centre of the opening, along the line. */
  readonly atM: number;
  readonly widthM: number;
  readonly leaves: 1 | 2;
  /** The post that a single gate hangs from. */
  readonly hungFrom: LineEnd;
  /** The side it swings to, looking along the line from start to end. */
  readonly opens: 'left' | 'right';
  /** Vehicles pass here, so the trench goes deeper. */
  readonly vehicles: boolean;
  readonly status: Status;
  readonly note: string;
}

/** How the live wire and the earth get past a gateway. At most one for each gateway. */
export interface Crossing {
  readonly kind: 'crossing';
  readonly id: string;
  readonly gatewayId: string;
  readonly method: 'buried' | 'overhead';
  /** Bow of the trench; `null` takes the default share of the opening's width. */
  readonly bowM: number | null;
  /** Which side the trench bows to, looking along the line from start to end. */
  readonly bowSide: 'left' | 'right';
  readonly depthM: number;
  readonly riserHeightM: number;
  readonly tailM: number;
  readonly allowanceM: number;
  readonly pipeBoreMm: number;
  readonly minBendRadiusM: number;
  /** Conductor of the live cable: id of a library conductor or of a `conductor` thing. */
  readonly cableId: string;
  /** An earth cable lies in the trench too. */
  readonly earth: boolean;
  readonly earthConnectionM: number;
  /** Both riser ends plugged: yes, no, or not noted. */
  readonly sealed: boolean | null;
  readonly status: Status;
  readonly note: string;
}

/** Where a cut-out switch is. */
export type SwitchPlace =
  /** In the run that ends at this post of the gateway, outside the opening. */
  | { readonly on: 'gateway'; readonly gatewayId: string; readonly post: LineEnd }
  /** At the end of a line, where it takes off from another. */
  | { readonly on: 'lineEnd'; readonly lineId: string; readonly end: LineEnd }
  /** Along a line. */
  | { readonly on: 'line'; readonly lineId: string; readonly atM: number }
  /** Where the lead-out joins the fence. */
  | { readonly on: 'leadOut'; readonly leadOutId: string };

export interface CutOutSwitch {
  readonly kind: 'switch';
  readonly id: string;
  readonly name: string;
  readonly place: SwitchPlace;
  readonly normally: 'closed' | 'open';
  /** Kept where it is when the plan is redone. */
  readonly pinned: boolean;
  readonly status: Status;
  readonly note: string;
}

/** The user's word on one place where a switch could go; its id is the candidate's key. */
export interface SwitchRule {
  readonly kind: 'switchRule';
  readonly id: string;
  readonly rule: 'forced' | 'forbidden';
}

/** A place that the user adds to those where a switch could go. */
export interface SwitchCandidatePlace {
  readonly kind: 'switchCandidate';
  readonly id: string;
  readonly lineId: string;
  readonly atM: number;
  /** Cost relative to a switch at a gateway; `null` takes the cost along a run. */
  readonly cost: number | null;
}

export interface Energiser {
  readonly kind: 'energiser';
  readonly id: string;
  readonly name: string;
  readonly at: LonLat;
  /** Open-circuit peak. */
  readonly openCircuitV: number;
  /** Peak into the standard's 500 ohm load. */
  readonly into500OhmV: number;
  readonly storedJ: number | null;
  readonly outputJ: number | null;
  readonly status: Status;
  readonly note: string;
}

/** Insulated cable from an energiser (first vertex) to the fence (last vertex). */
export interface LeadOut {
  readonly kind: 'leadOut';
  readonly id: string;
  readonly name: string;
  readonly energiserId: string;
  readonly path: readonly LonLat[];
  readonly cableId: string;
  readonly buried: boolean;
  readonly status: Status;
  readonly note: string;
}

/** The driven rods of one energiser. */
export interface EarthField {
  readonly kind: 'earthField';
  readonly id: string;
  readonly energiserId: string;
  readonly at: LonLat;
  readonly rods: number;
  readonly rodLengthM: number;
  readonly rodDiameterMm: number;
  readonly spacingM: number;
  readonly status: Status;
  readonly note: string;
}

/** The name of the paddock that holds the point `at`; the paddock's outline is found from the fences. */
export interface PaddockName {
  readonly kind: 'paddock';
  readonly id: string;
  readonly name: string;
  readonly at: LonLat;
  readonly note: string;
}

export type ServiceKind =
  | 'powerLine'
  | 'waterPipe'
  | 'gasPipe'
  | 'dataCable'
  | 'drain'
  | 'road'
  | 'path'
  | 'creek'
  | 'floodZone'
  | 'earthElectrode';

/** What else is there: a line, an area (closed path) or a point (one vertex). */
export interface Service {
  readonly kind: 'service';
  readonly id: string;
  readonly name: string;
  readonly what: ServiceKind;
  readonly path: readonly LonLat[];
  /** Of a power line. */
  readonly voltageV: number | null;
  readonly buried: boolean;
  /** The public uses it (roads and paths). */
  readonly open: 'public' | 'private' | null;
  readonly note: string;
}

/** A conductor that the user measured or read off a label. */
export interface UserConductor {
  readonly kind: 'conductor';
  readonly id: string;
  readonly name: string;
  readonly ohmPerKm: number;
  readonly note: string;
}

/** A voltage or current measured at a place on a date. */
export interface Reading {
  readonly kind: 'reading';
  readonly id: string;
  readonly at: LonLat;
  /** ISO 8601 date or date and time, as written down. */
  readonly date: string;
  readonly voltageV: number | null;
  readonly currentA: number | null;
  readonly openSwitchIds: readonly string[];
  readonly note: string;
}

export type Thing =
  | Property
  | FenceType
  | FenceLine
  | Post
  | Gateway
  | Crossing
  | CutOutSwitch
  | SwitchRule
  | SwitchCandidatePlace
  | Energiser
  | LeadOut
  | EarthField
  | PaddockName
  | Service
  | UserConductor
  | Reading;

export type Kind = Thing['kind'];
export type ThingOf<K extends Kind> = Extract<Thing, { readonly kind: K }>;
