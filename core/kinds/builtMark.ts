import { message } from '../words/message.ts';
import { note, person } from './common.ts';
import { crossing } from './crossing.ts';
import { kind, type ThingFrom, type ValuesOf } from './describe.ts';
import { fenceLine } from './fenceLine.ts';
import { choice, date, key, list, most, orNone, place, record, thing } from './fields.ts';
import { gateway } from './gateway.ts';
import { earthField, energiser, leadOut } from './supply.ts';
import { cutOutSwitch } from './switches.ts';

/** What is first planned and then built, in the order in which it is listed. */
export const buildable = [fenceLine, gateway, crossing, cutOutSwitch, leadOut, energiser, earthField] as const;
export type BuildableThing = ThingFrom<(typeof buildable)[number]>;
export type BuildableKind = BuildableThing['kind'];

const plannedFields = {
  thing: thing(buildable, message('kinds.mustBe.buildable')),
  places: list(place(), { most: most.vertices, mustBe: message('kinds.mustBe.places') }),
};
/** A thing as it stood when it was marked built, and where that was: its path, or its one or two places. */
export type PlannedThing = ValuesOf<typeof plannedFields>;

/** Says when and by whom a thing was built, and keeps what had been planned. Its `id` is `built:`, kind, `:`, id. */
export const builtMark = kind('builtMark', {
  lists: ['record', 'handover', 'exchange'],
  fields: {
    thingKind: choice(['fenceLine', 'gateway', 'crossing', 'switch', 'leadOut', 'energiser', 'earthField']),
    thingId: key(),
    /** ISO 8601 date; null: not known. */
    date: orNone(date()),
    by: person,
    note,
    /** The thing as it was planned; null where it was drawn as built from the start. The thing itself holds what is real. */
    planned: orNone(record(plannedFields, { mustBe: message('kinds.mustBe.planned') })),
  },
});
