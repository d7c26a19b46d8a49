import { fieldsOf, type KindIn } from '../../kinds/allKinds.ts';
import { message } from '../../words/message.ts';
import { put } from '../project.ts';
import type { Kind, Thing, ThingOf } from '../things.ts';
import { whyNotWhole } from './changeThing.ts';
import { whyNotFields } from './support/checkFields.ts';
import { type Edit, firstRefusal, guarded, type NewId, type Refusal, type WhyNot } from './support/edit.ts';
import { whyNotPoint } from './support/whyNotPath.ts';

/** Kinds that stand by themselves; the others have an edit of their own. */
export type PlainKind = KindIn<'plain'>;

/** A whole thing without its id. */
export type AddThing = { readonly [K in PlainKind]: Omit<ThingOf<K>, 'id'> }[PlainKind];

/** Adds a post, an earth field, a service, a reading, a paddock name, a photo, a test and the like. */
export function addThing(wanted: AddThing, newId: NewId): Edit {
  return guarded(whyNotAddThing(wanted), (project) => {
    return put(project, { ...wanted, id: newId(wanted.kind) } as Thing);
  });
}

/** `notValid` (a value out of its bounds, or one left out), `notFound` (what it names is not there), `tooFar`. */
export function whyNotAddThing({ kind, ...values }: AddThing): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotComplete(kind, values),
      () => whyNotFields(project, kind, null, values),
      () => whyNotWhole({ kind, id: '', ...values } as Thing),
      () => {
        const points = 'at' in values ? [values.at] : 'path' in values ? values.path : [];
        return points.reduce<Refusal | null>((refusal, at) => refusal ?? whyNotPoint(project, at), null);
      },
    );
}

function whyNotComplete(kind: Kind, values: object): Refusal | null {
  const needed = Object.entries(fieldsOf(kind)).filter(([, { optional = false }]) => !optional);
  const missing = needed.find(([field]) => !Object.hasOwn(values, field))?.[0];
  return missing ? { code: 'notValid', message: message('edits.fields.missing', { kind, field: missing }) } : null;
}
