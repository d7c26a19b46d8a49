/**
 * Everything a project file holds, as plain frozen data. Positions are WGS 84 degrees, `[lon, lat]`; a place along a
 * fence line is a geodesic distance in metres from the line's first vertex (`atM`). Lengths, areas, sections and
 * voltages are never stored here: they are computed.
 */

import type { GroundHeights } from './groundThings.ts';
import type { FaultHunt } from './huntThings.ts';
import type { InGround } from './inGroundThings.ts';
import type { Handover, RecordThing } from './recordThings.ts';
import type { CoordinateSettings, Underlay } from './underlayThings.ts';
import type { Yardstick } from './yardstick.ts';

export type { CoordinateSettings, Underlay } from './underlayThings.ts';

/** Longitude and latitude in degrees, WGS 84. */
export type LonLat = readonly [lon: number, lat: number];

/** Planned, or really there. */
export type Status = 'planned' | 'built';

/** One of a line's two ends: where it was begun, and where it was finished. */
export type LineEnd = 'start' | 'end';

/** How much grows against the wires; each class's leakage is in `core/electrical`. `null` takes the property's. */
export type Growth =
  | 'clean'
  | 'light'
  | 'heavy'
  /** Resistance to earth of one kilometre of one live wire: n live wires leak n times as much. */
  | { readonly leakageOhmKm: number };

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
  /** Plain wires that carry nothing. Absent (older files): nobody has said, and none are counted. */
  readonly plainWires?: number;
  /** Barbed wires in the fence; they are never electrified. */
  readonly barbedWires: number;
  /** Conductor of its live wires: id of a library conductor or of a `conductor` thing. */
  readonly wireId: string;
  /** Conductor of its earth and plain wires, in the same way; absent: that of the live wires. */
  readonly plainWireId?: string;
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
  /** The earth goes across too: a cable in the trench, or a wire overhead. */
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

/** The user's word on one place where a switch could go; its id is the place's key as text, see `placeKey.ts`. */
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
  /** Where it was read, in words. */
  readonly place?: string;
  /** Letter of the section, at that time. */
  readonly section?: string;
  readonly meter?: string;
  readonly weather?: string;
  readonly by?: string;
  /** The run through the test sheets that it is part of. */
  readonly runId?: string;
  /** What it was judged by when it was taken, as part of a run. */
  readonly yardstick?: Yardstick;
  readonly note: string;
}

/** How the order is worked out. At most one, with id `order`; without it the defaults of `orderDefaults.ts` hold. */
export interface OrderSettings {
  readonly kind: 'orderSettings';
  readonly id: 'order';
  /** ISO 4217 code of all prices and rates; null: not said yet. */
  readonly currency: string | null;
  /** Tax on top of prices and rates that name none of their own, percent. */
  readonly taxPercent: number;
  /** Planned things only, or everything as if nothing stood yet. */
  readonly count: 'planned' | 'all';
  /** A bend of at least this takes an angle post; of at least `strainerFromDeg`, a strainer. */
  readonly angleFromDeg: number;
  readonly strainerFromDeg: number;
  /** Longest stretch of wire between two strainers; a longer one gets strainers in between. */
  readonly maxStrainM: number;
  /** Wire for tying off at each end of each wire. */
  readonly tieOffM: number;
  /** Each wire of a strain has a tightener for every such length that it begins. */
  readonly tightenerEveryM: number;
  /** Along a public road or path: a warning sign at least every so far. */
  readonly signEveryM: number;
  /** Lost at each cut, and to square up the end of each roll. */
  readonly cutLossM: number;
  readonly rollTrimM: number;
}

/** What a fence type takes besides its wires and posts. Its `id` is `make:` and the type's. */
export interface FenceMake {
  readonly kind: 'fenceMake';
  readonly id: string;
  readonly typeId: string;
  /** Droppers between each two posts. */
  readonly droppersPerBay: number;
}

/** Something that is bought. Prices are of one pack, before tax. */
export interface CatalogueItem {
  readonly kind: 'catalogueItem';
  readonly id: string;
  readonly name: string;
  /** What it serves: the key of a take-off quantity ("pipe:19"), or nothing where only kits name it. */
  readonly measure: string | null;
  readonly unit: 'each' | 'm';
  /** Pieces or metres in one pack or roll. */
  readonly packSize: number;
  readonly price: number | null;
  /** Null takes the tax of the order. */
  readonly taxPercent: number | null;
  /** Added for waste before rounding up to packs, percent. */
  readonly wastePercent: number;
  /** An invented price, there to show how the list works. */
  readonly invented: boolean;
  readonly note: string;
}

/** Several items that are put in together for one of a take-off quantity. */
export interface Kit {
  readonly kind: 'kit';
  readonly id: string;
  readonly name: string;
  /** Key of the take-off quantity that it serves. */
  readonly measure: string;
  readonly parts: readonly KitPart[];
}

export interface KitPart {
  readonly itemId: string;
  /** Of the item's unit, for each one of the quantity. */
  readonly amount: number;
}

/** What labour is paid by. */
export type LabourUnit = 'fenceKm' | 'strainer' | 'gateway' | 'crossing' | 'trenchM' | 'switch' | 'stake' | 'energiser';

/** What a piece of work costs, before tax. Its `id` is `labour:` and what it is paid by. */
export interface LabourRate {
  readonly kind: 'labourRate';
  readonly id: string;
  readonly per: LabourUnit;
  readonly rate: number | null;
  readonly taxPercent: number | null;
  readonly invented: boolean;
}

/** A roll, or several alike, that need not be bought. */
export interface RollOnHand {
  readonly kind: 'rollOnHand';
  readonly id: string;
  /** Key of the quantity that is cut from it: "pipe:19". */
  readonly measure: string;
  readonly lengthM: number;
  readonly count: number;
  readonly note: string;
}

/** A part of the job that is ordered and done by itself. */
export interface Stage {
  readonly kind: 'stage';
  readonly id: string;
  readonly name: string;
  /** Stages are done in this order. */
  readonly rank: number;
  readonly note: string;
}

/** Says in which stage a thing is done. Its `id` is `in:` and the thing's. */
export interface StageMark {
  readonly kind: 'stageMark';
  readonly id: string;
  readonly thingId: string;
  readonly stageId: string;
}

/** The drawing as it once stood, kept to be compared with another or to go back to. */
export interface KeptPlan {
  readonly kind: 'keptPlan';
  readonly id: string;
  readonly name: string;
  /** ISO 8601. */
  readonly date: string;
  readonly note: string;
  readonly things: readonly DrawnThing[];
}

/** What is drawn, measured or said of the property itself. */
export type DrawnThing =
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

/** What the order is worked out with. */
export type OrderThing = OrderSettings | FenceMake | CatalogueItem | Kit | LabourRate | RollOnHand | Stage | StageMark;

export type Thing =
  | DrawnThing
  | OrderThing
  | KeptPlan
  | RecordThing
  | InGround
  | Handover
  | FaultHunt
  | GroundHeights
  | Underlay
  | CoordinateSettings;

export type Kind = Thing['kind'];
export type ThingOf<K extends Kind> = Extract<Thing, { readonly kind: K }>;
