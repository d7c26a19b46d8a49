import { fieldsOf } from '../../kinds/allKinds.ts';
import { fieldCalled } from '../../kinds/words.ts';
import { message } from '../../words/message.ts';
import { put } from '../project.ts';
import type { Kind, Thing, ThingOf } from '../things.ts';
import { whyNotAtMost, whyNotFields } from './support/checkFields.ts';
import { type Edit, firstRefusal, guarded, type Refusal, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';

export interface ChangeThing<K extends Kind = Kind> {
  readonly kind: K;
  readonly id: string;
  readonly to: Partial<Omit<ThingOf<K>, 'kind' | 'id'>>;
}

/** Changes fields of one thing after checking each against its bounds. A value that is the same changes nothing. */
export function changeThing<K extends Kind>(wanted: ChangeThing<K>): Edit {
  return guarded(whyNotChangeThing(wanted), (project) => {
    const thing = found(project, wanted.kind, wanted.id);
    const changed = { ...thing, ...wanted.to } as Thing;
    return sameFields(thing, wanted.to) ? project : put(project, changed);
  });
}

/** `notFound`, `ownEdit` (the field has an edit of its own), `notValid`, `nameTaken`, `tooLarge`, `voltageOrder`. */
export function whyNotChangeThing<K extends Kind>({ kind, id, to }: ChangeThing<K>): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, kind, id),
      () => whyNotHere(kind, to),
      () => whyNotFields(project, kind, id, to),
      () => whyNotAtMost(project, { ...found(project, kind, id), ...to } as Thing, to),
      () => whyNotWhole({ ...found(project, kind, id), ...to } as Thing),
    );
}

function whyNotHere(kind: Kind, to: object): Refusal | null {
  const field = Object.keys(to).find((name) => fieldsOf(kind)[name]?.ownEdit);
  if (!field) return null;
  return { code: 'ownEdit', message: message('edits.fields.ownEdit', { kind, field: fieldCalled(kind, field) }) };
}

/** What must hold between the fields of one thing. */
export function whyNotWhole(thing: Thing): Refusal | null {
  if (thing.kind !== 'energiser' || thing.into500OhmV <= thing.openCircuitV) return null;
  const { into500OhmV, openCircuitV } = thing;
  return { code: 'voltageOrder', message: message('edits.fields.voltageOrder', { into500OhmV, openCircuitV }) };
}

function sameFields(thing: object, to: object): boolean {
  return Object.entries(to).every(([field, value]) => (thing as Record<string, unknown>)[field] === value);
}
