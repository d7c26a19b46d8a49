/** What the order is worked out with. */

import { message } from '../words/message.ts';
import { note, ownName, percent, rank } from './common.ts';
import { kind, type ValueOf, type ValuesOf } from './describe.ts';
import {
  choice,
  flag,
  key,
  lengthM,
  list,
  looseReference,
  name,
  neverNothing,
  number,
  orNone,
  patterned,
  record,
  reference,
  whole,
} from './fields.ts';

const placeless = ['order', 'counted', 'placeless'] as const;

/** In the order's currency; nobody's prices are bounded here, only slips of the key. */
const price = orNone(number('', { max: 1e9 }));
const bendDeg = number('degrees', { max: 180, decimals: 0, file: { max: 180 } });
const everyM = lengthM({ min: 10, max: 100_000, file: neverNothing });
const lostM = lengthM({ max: 5 });

/**
 * How the order is worked out. At most one, with id `order`; without it the defaults hold. Common practice, no source, and
 * all of it can be changed: bends and strains, tie-offs, the distance between warning signs (the standard, IEC 60335-2-76
 * Annex BB, asks for "frequent intervals" and names no figure), trimming. A tightener for each wire of every quarter mile of
 * strain: R. Lemus, "Livestock fencing systems for pasture management", part 3, an extension article.
 */
export const orderSettings = kind('orderSettings', {
  onlyId: 'order',
  lists: placeless,
  fields: {
    /** ISO 4217 code of all prices and rates; null: not said yet. */
    currency: orNone(patterned(/^[A-Z]{3}$/, message('kinds.mustBe.currency')), {
      default: null,
    }),
    /** Tax on top of prices and rates that name none of their own, percent. */
    taxPercent: { ...percent, default: 0 },
    /** Planned things only, or everything as if nothing stood yet. */
    count: choice(['planned', 'all'], { default: 'planned' }),
    /** A bend of at least this takes an angle post; of at least `strainerFromDeg`, a strainer. */
    angleFromDeg: { ...bendDeg, default: 10 },
    strainerFromDeg: { ...bendDeg, default: 45 },
    /** Longest stretch of wire between two strainers; a longer one gets strainers in between. */
    maxStrainM: { ...everyM, default: 1000 },
    /** Wire for tying off at each end of each wire. */
    tieOffM: lengthM({ max: 50, default: 0.5 }),
    /** Each wire of a strain has a tightener for every such length that it begins. */
    tightenerEveryM: { ...everyM, default: 402.336 },
    /** Along a public road or path: a warning sign at least every so far. */
    signEveryM: lengthM({ min: 1, max: 10_000, file: neverNothing, default: 50 }),
    /** Lost at each cut, and to square up the end of each roll. */
    cutLossM: { ...lostM, default: 0 },
    rollTrimM: { ...lostM, default: 0.1 },
  },
});

/** What a fence type takes besides its wires and posts. Its `id` is `make:` and the type's. */
export const fenceMake = kind('fenceMake', {
  lists: placeless,
  fields: {
    typeId: reference('fenceType'),
    /** Droppers between each two posts. */
    droppersPerBay: whole({ unit: 'droppers', max: 20 }),
  },
});

/** Key of a take-off quantity: "pipe:19". */
const measure = key({ most: 200 });

/** Something that is bought. Prices are of one pack, before tax. */
export const catalogueItem = kind('catalogueItem', {
  lists: placeless,
  fields: {
    name: name(),
    /** What it serves: the key of a take-off quantity ("pipe:19"), or nothing where only kits name it. */
    measure: orNone(measure),
    unit: choice(['each', 'm']),
    /** Pieces or metres in one pack or roll. */
    packSize: number('', { above: true, max: 1e6, file: neverNothing }),
    price,
    /** Null takes the tax of the order. */
    taxPercent: orNone(percent),
    /** Added for waste before rounding up to packs, percent. */
    wastePercent: percent,
    /** An invented price, there to show how the list works. */
    invented: flag(),
    note,
  },
});

export const kitPartFields = {
  itemId: looseReference('catalogueItem'),
  /** Of the item's unit, for each one of the quantity. */
  amount: number('', { min: 0.01, max: 1000, file: neverNothing }),
};
export type KitPart = ValuesOf<typeof kitPartFields>;

/** Several items that are put in together for one of a take-off quantity. */
export const kit = kind('kit', {
  lists: placeless,
  fields: {
    name: ownName,
    /** Key of the take-off quantity that it serves. */
    measure,
    parts: list(record(kitPartFields), { most: 200, mustBe: message('kinds.mustBe.kitParts') }),
  },
});

const labourUnit = choice(['fenceKm', 'strainer', 'gateway', 'crossing', 'trenchM', 'switch', 'stake', 'energiser']);
/** What labour is paid by. */
export type LabourUnit = ValueOf<typeof labourUnit>;

/** What a piece of work costs, before tax. Its `id` is `labour:` and what it is paid by. */
export const labourRate = kind('labourRate', {
  lists: placeless,
  fields: { per: labourUnit, rate: price, taxPercent: orNone(percent), invented: flag() },
});

/** A roll, or several alike, that need not be bought. */
export const rollOnHand = kind('rollOnHand', {
  lists: [...placeless, 'plain'],
  fields: {
    /** Key of the quantity that is cut from it: "pipe:19". */
    measure,
    lengthM: lengthM({ min: 0.1, max: 10_000, file: neverNothing }),
    count: whole({ min: 1, max: 1000 }),
    note,
  },
});

/** A part of the job that is ordered and done by itself. */
export const stage = kind('stage', {
  lists: [...placeless, 'plain'],
  fields: {
    name: ownName,
    /** Stages are done in this order. */
    rank,
    note,
  },
});

/** Says in which stage a thing is done. Its `id` is `in:` and the thing's. */
export const stageMark = kind('stageMark', {
  lists: placeless,
  fields: { thingId: key(), stageId: reference('stage') },
});
