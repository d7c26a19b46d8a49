/** Kinds that hold or name things of other kinds. */

import { message } from '../words/message.ts';
import { note, ownName } from './common.ts';
import { type AnyKind, type InList, kind, type ThingFrom } from './describe.ts';
import { date, key, kindName, list, most, orNone, place, record, text, thing, whole } from './fields.ts';
import { type SimpleKind, simpleKinds } from './simpleKinds.ts';

const sidePx = whole({ unit: 'px', min: 1, max: 100_000, file: { min: 1, max: 100_000 } });

/** A photograph; its bytes lie in the file's own store of pictures, by `blobId`. */
export const photo = kind('photo', {
  lists: ['record', 'handover', 'changes', 'plain'],
  fields: {
    /** What it shows; null: the property. */
    of: orNone(
      record(
        { kind: kindName<SimpleKind['kind'] | 'photo' | 'keptPlan' | 'handover'>(), id: key() },
        { mustBe: message('kinds.mustBe.shown') },
      ),
    ),
    blobId: key(),
    /** A small copy. */
    thumbId: key(),
    widthPx: sidePx,
    heightPx: sidePx,
    /** When the camera says it was taken: ISO 8601 local date and time, or null. */
    takenAt: orNone(date()),
    /** Where the camera says it was taken, or null. */
    gps: orNone(place()),
    fileName: text(),
    caption: text(),
  },
});

/** What is drawn, measured or said of the property itself. */
export type DrawnKind = InList<SimpleKind, 'drawing'>;
/** What is recorded of things that are built. */
export type RecordKind = InList<SimpleKind | typeof photo, 'record'>;
/** What a handover keeps. */
export type RevisedKind = InList<SimpleKind | typeof photo, 'handover'>;

const drawn = simpleKinds.filter((each) => isIn(each, 'drawing')) as readonly AnyKind[] as readonly DrawnKind[];
const revised = [...simpleKinds, photo].filter((each) =>
  isIn(each, 'handover'),
) as readonly AnyKind[] as readonly RevisedKind[];

function isIn({ lists }: AnyKind, name: AnyKind['lists'][number]): boolean {
  return lists.includes(name);
}

/** The drawing as it once stood, kept to be compared with another or to go back to. */
export const keptPlan = kind('keptPlan', {
  lists: [],
  fields: {
    name: ownName,
    /** ISO 8601. */
    date: date(),
    note,
    things: list(thing<readonly DrawnKind[]>(drawn, message('kinds.mustBe.drawnThing')), {
      most: most.things,
      mustBe: message('kinds.mustBe.drawing'),
    }),
  },
});

/** The property as it was handed over. */
export const handover = kind('handover', {
  lists: [],
  fields: {
    /** 1, 2, 3, ... */
    number: whole({ min: 1, max: 1_000_000, file: { min: 1, max: 1_000_000 } }),
    /** ISO 8601 date. */
    date: date(),
    by: text(),
    to: text(),
    note,
    things: list(thing<readonly RevisedKind[]>(revised, message('kinds.mustBe.ofProperty')), {
      most: most.things,
      mustBe: message('kinds.mustBe.property'),
    }),
  },
});

export type DrawnThing = ThingFrom<DrawnKind>;
export type RecordThing = ThingFrom<RecordKind>;
export type RevisedThing = ThingFrom<RevisedKind>;
