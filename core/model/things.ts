/**
 * Everything a project file holds, as plain frozen data. Positions are WGS 84 degrees, `[lon, lat]`; a place along a
 * fence line is a geodesic distance in metres from the line's first vertex (`atM`). Lengths, areas, sections and
 * voltages are never stored here: they are computed.
 *
 * The types are derived from the descriptions in `core/kinds`, where each field is explained.
 */

import type { ThingOf } from '../kinds/allKinds.ts';

export type { Kind, Thing, ThingOf } from '../kinds/allKinds.ts';
export type { Growth, LineEnd, Status } from '../kinds/common.ts';
export type { LonLat } from '../kinds/describe.ts';
export type { KitPart, LabourUnit } from '../kinds/order.ts';
export type { CrossingDefaults, DivideSettings, PowerSettings } from '../kinds/property.ts';
export type { DrawnThing } from '../kinds/snapshots.ts';
export type { ServiceKind } from '../kinds/surroundings.ts';
export type { SwitchPlace } from '../kinds/switches.ts';
export type { CoordinateSettings, Underlay } from './underlayThings.ts';

export type Property = ThingOf<'property'>;
export type FenceType = ThingOf<'fenceType'>;
export type FenceLine = ThingOf<'fenceLine'>;
export type Post = ThingOf<'post'>;
export type Gateway = ThingOf<'gateway'>;
export type Crossing = ThingOf<'crossing'>;
export type CutOutSwitch = ThingOf<'switch'>;
export type SwitchRule = ThingOf<'switchRule'>;
export type SwitchCandidatePlace = ThingOf<'switchCandidate'>;
export type Energiser = ThingOf<'energiser'>;
export type LeadOut = ThingOf<'leadOut'>;
export type EarthField = ThingOf<'earthField'>;
export type PaddockName = ThingOf<'paddock'>;
export type Service = ThingOf<'service'>;
export type UserConductor = ThingOf<'conductor'>;
export type Reading = ThingOf<'reading'>;
export type OrderSettings = ThingOf<'orderSettings'>;
export type FenceMake = ThingOf<'fenceMake'>;
export type CatalogueItem = ThingOf<'catalogueItem'>;
export type Kit = ThingOf<'kit'>;
export type LabourRate = ThingOf<'labourRate'>;
export type RollOnHand = ThingOf<'rollOnHand'>;
export type Stage = ThingOf<'stage'>;
export type StageMark = ThingOf<'stageMark'>;
export type KeptPlan = ThingOf<'keptPlan'>;
