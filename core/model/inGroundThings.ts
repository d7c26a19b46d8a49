/** What lies in the ground apart from the drawing: see `things.ts`. */
import type { BuiltMark, BuriedPoint, CrossingRecord, EarthTest, RecordedOpening } from './recordThings.ts';
import type { Crossing, EarthField, Gateway, LeadOut } from './things.ts';

/** What has become of something buried. */
export type Fate =
  /** In the ground; nobody has said that it is cut off, so it counts as live. */
  | 'inUse'
  /** Left in the ground, cut off at both ends. */
  | 'dead'
  | 'takenOut';

/**
 * Something buried that the drawing shows no longer, or shows somewhere else now: kept as it was recorded, with the
 * places that its marks had. No edit of the drawing moves it. Its `was` never changes.
 */
export interface InGround {
  readonly kind: 'inGround';
  readonly id: string;
  readonly name: string;
  readonly fate: Fate;
  /** ISO 8601 date on which it left the drawing; null: not known. */
  readonly since: string | null;
  readonly note: string;
  readonly was: WasCrossing | WasLeadOut | WasEarthField;
}

/** A crossing with all that was recorded of it. */
export interface WasCrossing {
  readonly what: 'crossing';
  readonly gateway: Gateway;
  /** Name of the fence line that the gateway stood in. */
  readonly lineName: string;
  readonly crossing: Crossing;
  readonly record: CrossingRecord & { readonly opening: RecordedOpening };
  readonly points: readonly BuriedPoint[];
  readonly mark: BuiltMark | null;
}

export interface WasLeadOut {
  readonly what: 'leadOut';
  readonly leadOut: LeadOut;
  readonly energiserName: string;
  readonly mark: BuiltMark | null;
}

export interface WasEarthField {
  readonly what: 'earthField';
  readonly earthField: EarthField;
  readonly energiserName: string;
  readonly tests: readonly EarthTest[];
  readonly mark: BuiltMark | null;
}
