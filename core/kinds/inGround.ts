import { message } from '../words/message.ts';
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
  'inUse',
  /** Left in the ground, cut off at both ends. */
  'dead',
  'takenOut',
]);
/** What has become of something buried. */
export type Fate = ValueOf<typeof fate>;

const mark = orNone(thing([builtMark], message('kinds.mustBe.builtMark')));

const was = tagged(
  'what',
  {
    /** A crossing with all that was recorded of it. */
    crossing: {
      gateway: thing([gateway], message('kinds.mustBe.gateway')),
      /** Name of the fence line that the gateway stood in. */
      lineName: shortText(),
      crossing: thing([crossing], message('kinds.mustBe.crossing')),
      record: thingWith(crossingRecord, ['opening'], message('kinds.mustBe.recordWithOpening')),
      points: list(thing([buriedPoint], message('kinds.mustBe.buriedPoint')), {
        most: most.ids,
        mustBe: message('kinds.mustBe.listOfBuriedPoints'),
      }),
      mark,
    },
    leadOut: { leadOut: thing([leadOut], message('kinds.mustBe.leadOut')), energiserName: shortText(), mark },
    earthField: {
      earthField: thing([earthField], message('kinds.mustBe.earthField')),
      energiserName: shortText(),
      tests: list(thing([earthTest], message('kinds.mustBe.earthTest')), {
        most: most.ids,
        mustBe: message('kinds.mustBe.listOfEarthTests'),
      }),
      mark,
    },
  },
  { mustBe: message('kinds.mustBe.buried') },
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
