import { builtMark } from './builtMark.ts';
import { note, ownName } from './common.ts';
import { crossing } from './crossing.ts';
import { kind, type ValueOf } from './describe.ts';
import { choice, date, list, most, orNone, shortText, tagged, thing, thingWith } from './fields.ts';
import { gateway } from './gateway.ts';
import { earthField, leadOut } from './supply.ts';
import { earthTest } from './tests.ts';
import { buriedPoint, crossingRecord } from './trench.ts';

const fate = choice([
  /** In the ground; nobody has said that it is cut off, so it counts as live. */
  ['inUse', 'In use'],
  /** Left in the ground, cut off at both ends. */
  ['dead', 'Left in the ground, dead'],
  ['takenOut', 'Taken out of the ground'],
]);
/** What has become of something buried. */
export type Fate = ValueOf<typeof fate>;

const mark = orNone(thing([builtMark], 'a mark of what is built'));

const was = tagged(
  'what',
  {
    /** A crossing with all that was recorded of it. */
    crossing: {
      gateway: thing([gateway], 'a gateway'),
      /** Name of the fence line that the gateway stood in. */
      lineName: shortText(),
      crossing: thing([crossing], 'a crossing'),
      record: thingWith(crossingRecord, ['opening'], 'a record of a crossing with its opening'),
      points: list(thing([buriedPoint], 'a buried point'), { most: most.ids, mustBe: 'a list of buried points' }),
      mark,
    },
    leadOut: { leadOut: thing([leadOut], 'a lead-out'), energiserName: shortText(), mark },
    earthField: {
      earthField: thing([earthField], 'an earth field'),
      energiserName: shortText(),
      tests: list(thing([earthTest], 'an earth test'), { most: most.ids, mustBe: 'a list of earth tests' }),
      mark,
    },
  },
  { mustBe: 'what was buried' },
);
type Was = ValueOf<typeof was>;
export type WasCrossing = Extract<Was, { readonly what: 'crossing' }>;
export type WasLeadOut = Extract<Was, { readonly what: 'leadOut' }>;
export type WasEarthField = Extract<Was, { readonly what: 'earthField' }>;

/**
 * Something buried that the drawing shows no longer, or shows somewhere else now: kept as it was recorded, with the
 * places that its marks had. No edit of the drawing moves it. Its `was` never changes.
 */
export const inGround = kind('inGround', {
  lists: ['handover', 'changes', 'exchange'],
  fields: {
    name: ownName,
    fate,
    /** ISO 8601 date on which it left the drawing; null: not known. */
    since: orNone(date()),
    note,
    was,
  },
});
