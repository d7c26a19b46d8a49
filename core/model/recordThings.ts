/** What is written down of the work as it was really done, beside the drawing: see `things.ts`. */
import type { InGround } from './inGroundThings.ts';
import type {
  Crossing,
  CutOutSwitch,
  DrawnThing,
  EarthField,
  Energiser,
  FenceLine,
  Gateway,
  Kind,
  LeadOut,
  LineEnd,
  LonLat,
} from './things.ts';

/** What is first planned and then built. */
export type BuildableThing = FenceLine | Gateway | Crossing | CutOutSwitch | Energiser | LeadOut | EarthField;
export type BuildableKind = BuildableThing['kind'];

/** Says when and by whom a thing was built, and keeps what had been planned. Its `id` is `built:`, kind, `:`, id. */
export interface BuiltMark {
  readonly kind: 'builtMark';
  readonly id: string;
  readonly thingKind: BuildableKind;
  readonly thingId: string;
  /** ISO 8601 date; null: not known. */
  readonly date: string | null;
  readonly by: string;
  readonly note: string;
  /** The thing as it was planned; null where it was drawn as built from the start. The thing itself holds what is real. */
  readonly planned: PlannedThing | null;
}

/** A thing as it stood when it was marked built, and where that was: its path, or its one or two places. */
export interface PlannedThing {
  readonly thing: BuildableThing;
  readonly places: readonly LonLat[];
}

/**
 * A crossing as it lies in the ground, beyond what the crossing itself says (bow, bore, cable, riser height, seals).
 * At most one for each crossing; its `id` is `record:` and the crossing's.
 */
export interface CrossingRecord {
  readonly kind: 'crossingRecord';
  readonly id: string;
  readonly crossingId: string;
  /**
   * How the trench runs between the riser feet: an arc with the crossing's bow (or through its bend, where that was
   * taped), or straight from one buried point to the next.
   */
  readonly route: 'arc' | 'points';
  /** Depths as measured, at places along the trench from the start post's riser foot. */
  readonly depths: readonly { readonly alongM: number; readonly depthM: number }[];
  /** Cable joints under ground; null: not noted. */
  readonly jointsUnderground: number | null;
  /** Where the joints are, or how they were made. */
  readonly jointsNote: string;
  /** What the risers are fixed to: "hinge post", "its own steel post". */
  readonly risers: { readonly start: string; readonly end: string };
  /** What else lies in the trench. */
  readonly alsoInTrench: string;
  readonly soil: string;
  readonly recordedBy: string;
  /** ISO 8601 date. */
  readonly recordedOn: string | null;
  readonly note: string;
  /** The opening as it was when the crossing was dug; without it, as the gateway is drawn. */
  readonly opening?: RecordedOpening;
}

/** Where a gateway's posts stood when its crossing was dug, kept once the drawing says otherwise. */
export interface RecordedOpening {
  readonly startPostAt: LonLat;
  readonly endPostAt: LonLat;
  /** What counted as the start and the end then: see `Gateway` and `Crossing`. */
  readonly hungFrom: LineEnd;
  readonly bowSide: 'left' | 'right';
  /** The bow that is assumed where none was measured (the crossing's own is null), metres. */
  readonly bowM: number;
}

export type BuriedRole =
  /** StatusBar of the riser at the gateway's start post, and at its end post. */
  | 'startFoot'
  | 'endFoot'
  /** The furthest point of the bow. */
  | 'bend'
  | 'point';

/**
 * A point of a buried cable and how it was measured. Of several ways ties count before an offset, an offset before
 * GPS. A crossing has at most one of each role but `point`; points follow each other by `rank`.
 */
export interface BuriedPoint {
  readonly kind: 'buriedPoint';
  readonly id: string;
  readonly crossingId: string;
  readonly role: BuriedRole;
  /** Of its own choice; empty: called by its role. */
  readonly name: string;
  /** Order from the start post's foot to the end post's, among the points between them. */
  readonly rank: number;
  readonly ties: readonly TapeTie[];
  /**
   * Which of two mirror points it is, looking from the first tie's post to the second's; null: the one nearer to where
   * it was drawn.
   */
  readonly side: 'left' | 'right' | null;
  /** From the gateway's start post towards its end post, and square off that line (left above 0, right below). */
  readonly offset: { readonly alongM: number; readonly leftM: number } | null;
  /** As a receiver showed it, and its standard error as far as known. */
  readonly gps: { readonly lonLat: LonLat; readonly seM: number } | null;
  readonly note: string;
}

/** A tape distance from something that does not move. */
export interface TapeTie {
  readonly from: TieFrom;
  /** What the post was called and where it stood when the tape was held to it: from there the point is worked out. */
  readonly postName: string;
  readonly postAt: LonLat;
  readonly distanceM: number;
  /** Standard error of the distance. */
  readonly seM: number;
}

export type TieFrom =
  | { readonly on: 'post'; readonly postId: string }
  | { readonly on: 'gatePost'; readonly gatewayId: string; readonly post: LineEnd };

/** A photograph; its bytes lie in the file's own store of pictures, by `blobId`. */
export interface Photo {
  readonly kind: 'photo';
  readonly id: string;
  /** What it shows; null: the property. */
  readonly of: { readonly kind: Kind; readonly id: string } | null;
  readonly blobId: string;
  /** A small copy. */
  readonly thumbId: string;
  readonly widthPx: number;
  readonly heightPx: number;
  /** When the camera says it was taken: ISO 8601 local date and time, or null. */
  readonly takenAt: string | null;
  /** Where the camera says it was taken, or null. */
  readonly gps: LonLat | null;
  readonly fileName: string;
  readonly caption: string;
}

/** A walk through the test sheets, section by section. Its readings carry its id. */
export interface TestRun {
  readonly kind: 'testRun';
  readonly id: string;
  readonly name: string;
  /** ISO 8601 date of its beginning. */
  readonly date: string;
  readonly by: string;
  readonly meter: string;
  readonly weather: string;
  /** Every section that was done or left out. */
  readonly results: readonly TestResult[];
  readonly finished: boolean;
  readonly note: string;
}

export interface TestResult {
  /** The section's letter at that time. */
  readonly section: string;
  readonly outcome: 'passed' | 'failed' | 'leftOut';
  readonly note: string;
}

/** A test of an earth field: the fence loaded down far away, then the voltage of the earth measured. */
export interface EarthTest {
  readonly kind: 'earthTest';
  readonly id: string;
  readonly earthFieldId: string;
  /** ISO 8601 date. */
  readonly date: string;
  /** Between the last rod and a probe as far off as the lead reaches. */
  readonly earthV: number;
  /** Of the fence while it was loaded; null: not read. */
  readonly fenceV: number | null;
  readonly by: string;
  readonly meter: string;
  readonly weather: string;
  /** How the fence was loaded. */
  readonly load: string;
  readonly note: string;
}

/** The property as it was handed over. */
export interface Handover {
  readonly kind: 'handover';
  readonly id: string;
  /** 1, 2, 3, ... */
  readonly number: number;
  /** ISO 8601 date. */
  readonly date: string;
  readonly by: string;
  readonly to: string;
  readonly note: string;
  readonly things: readonly RevisedThing[];
}

/** What is recorded of things that are built. */
export type RecordThing = BuiltMark | CrossingRecord | BuriedPoint | Photo | TestRun | EarthTest;

/** What a handover keeps. */
export type RevisedThing = DrawnThing | RecordThing | InGround;
