/** What is recorded of a crossing in the ground: the trench, and the points that tapes are held to. */

import { message } from '../words/message.ts';
import { hand, lineEnd, note, rank } from './common.ts';
import { bowM, crossingFigures } from './crossing.ts';
import { kind, type ValueOf, type ValuesOf } from './describe.ts';
import {
  choice,
  date,
  lengthM,
  list,
  looseReference,
  optional,
  orNone,
  place,
  record,
  reference,
  shortText,
  tagged,
  text,
  whole,
} from './fields.ts';

const openingFields = {
  startPostAt: place(),
  endPostAt: place(),
  /** What counted as the start and the end then: see `gateway` and `crossing`. */
  hungFrom: lineEnd,
  bowSide: hand,
  /** The bow that is assumed where none was measured (the crossing's own is null), metres. */
  bowM,
};
/** Where a gateway's posts stood when its crossing was dug, kept once the drawing says otherwise. */
export type RecordedOpening = ValuesOf<typeof openingFields>;

/** A depth measured from the ground to the top of the pipe, so far along the trench. */
export const measuredDepth = {
  alongM: lengthM({ max: 1000 }),
  depthM: { ...crossingFigures.depthM },
};

/**
 * A crossing as it lies in the ground, beyond what the crossing itself says (bow, bore, cable, riser height, seals).
 * At most one for each crossing; its `id` is `record:` and the crossing's.
 */
export const crossingRecord = kind('crossingRecord', {
  lists: ['record', 'handover', 'changes', 'exchange'],
  fields: {
    crossingId: reference('crossing'),
    /**
     * How the trench runs between the riser feet: an arc with the crossing's bow (or through its bend, where that was
     * taped), or straight from one buried point to the next.
     */
    route: choice(['arc', 'points'], { default: 'arc' }),
    /** Depths as measured, at places along the trench from the start post's riser foot. */
    depths: list(record(measuredDepth), {
      most: 1000,
      mustBe: message('kinds.mustBe.depths'),
      default: [],
    }),
    /** Cable joints under ground; null: not noted. */
    jointsUnderground: orNone(whole({ max: 100 }), {
      default: null,
    }),
    /** Where the joints are, or how they were made. */
    jointsNote: text({ default: '' }),
    /** What the risers are fixed to: "hinge post", "its own steel post". */
    risers: record({ start: text({ default: '' }), end: text({ default: '' }) }),
    /** What else lies in the trench. */
    alsoInTrench: text({ default: '' }),
    soil: text({ default: '' }),
    recordedBy: text({ default: '' }),
    /** ISO 8601 date. */
    recordedOn: orNone(date(), { default: null }),
    note,
    /** The opening as it was when the crossing was dug; without it, as the gateway is drawn. */
    opening: optional(record(openingFields)),
  },
});

const from = tagged(
  'on',
  {
    post: { postId: looseReference('post') },
    gatePost: { gatewayId: looseReference('gateway'), post: lineEnd },
  },
  { mustBe: message('kinds.mustBe.post') },
);
export type TieFrom = ValueOf<typeof from>;

/** A tape distance from something that does not move. */
export const tieFields = {
  from,
  /** What the post was called and where it stood when the tape was held to it: from there the point is worked out. */
  postName: text(),
  postAt: place(),
  distanceM: lengthM({ max: 1000 }),
  /** Standard error of the distance. */
  seM: lengthM({ min: 0.001, max: 10, decimals: 3, file: { above: true } }),
};
export type TapeTie = ValuesOf<typeof tieFields>;

const role = choice([
  /** Foot of the riser at the gateway's start post, and at its end post. */
  'startFoot',
  'endFoot',
  /** The furthest point of the bow. */
  'bend',
  'point',
]);
export type BuriedRole = ValueOf<typeof role>;

const offsetM = lengthM({ min: -1000, max: 1000, file: { min: -1e6, max: 1e6 } });

export const pointOffset = { alongM: offsetM, leftM: offsetM };
export const pointGps = {
  lonLat: place(),
  seM: lengthM({ min: 0.001, max: 10_000, decimals: 3, file: { above: true } }),
};

/**
 * A point of a buried cable and how it was measured. Of several ways ties count before an offset, an offset before
 * GPS. A crossing has at most one of each role but `point`; points follow each other by `rank`.
 */
export const buriedPoint = kind('buriedPoint', {
  lists: ['record', 'handover', 'changes', 'exchange', 'plain'],
  fields: {
    crossingId: reference('crossing'),
    role,
    /** Of its own choice; empty: called by its role. */
    name: shortText({ default: '' }),
    /** Order from the start post's foot to the end post's, among the points between them. */
    rank: { ...rank, default: 0 },
    ties: list(record(tieFields), {
      most: 100,
      mustBe: message('kinds.mustBe.ties'),
      default: [],
    }),
    /**
     * Which of two mirror points it is, looking from the first tie's post to the second's; null: the one nearer to where
     * it was drawn.
     */
    side: orNone(hand, { default: null }),
    /** From the gateway's start post towards its end post, and square off that line (left above 0, right below). */
    offset: orNone(record(pointOffset), { default: null }),
    /** As a receiver showed it, and its standard error as far as known. */
    gps: orNone(record(pointGps), { default: null }),
    note,
  },
});
