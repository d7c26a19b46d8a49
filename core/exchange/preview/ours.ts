import { type KindIn, kindsIn } from '../../kinds/allKinds.ts';
import { type Body, bodyVersion, upgrade, versionIn } from '../../kinds/upgrade.ts';
import { isKind } from '../../model/project.ts';
import { type Message, message } from '../../words/message.ts';
import { own, type RawObject, shownText } from './raw.ts';
import type { OurThing } from './types.ts';

/** Kinds that a map exchanges, what a thing stands on before it. Prices, kept plans and handovers are no part of a map, and
 * photos do not fit into one. */
export const exchangedKinds = kindsIn('exchange');

export type ExchangedKind = KindIn<'exchange'>;

/** The properties that mark a feature as written by this program. */
export const kindProperty = 'undergate:kind';
export const idProperty = 'undergate:id';

/** The version that a thing's fields are of, and which of a feature's properties are fields; the others are computed. */
const versionProperty = 'undergate:version';
const fieldsProperty = 'undergate:fields';

/** Of another place where a thing may lie: the feature id of that thing. */
export const placeOfProperty = 'undergate:placeOf';

/** Says that an area's ring ran clockwise before it was wound by the right-hand rule. */
export const clockwiseProperty = 'undergate:drawnClockwise';

/** Kinds of features that only show what is computed; they are passed over when a file comes back. */
export const computedKinds = ['run', 'paddockOutline', 'otherPlace'] as const;

const ourPrefix = 'undergate:';

/** The marks by which a thing of ours is known again, with all its fields. */
export function marked(kind: string, id: string, fields: object): RawObject {
  return {
    [kindProperty]: kind,
    [idProperty]: id,
    [versionProperty]: bodyVersion,
    [fieldsProperty]: Object.keys(fields),
    ...fields,
  };
}

/** What a feature's properties say that it is. */
export type Ours =
  /** Not ours. */
  | { readonly is: 'foreign' }
  /** Shows only what is computed. */
  | { readonly is: 'computed' }
  /** Ours, but not to be read: why, as the end of a sentence about it. */
  | { readonly is: 'unreadable'; readonly why: Message; readonly whatToDo: Message }
  /** Ours, of the present version, still to be checked: one mostly, the thing itself first. */
  | { readonly is: 'things'; readonly things: readonly OurThing[] };

/** Reads our marks on a feature. Its thing may be of an older version, and is brought to the present one. */
export function oursOf(properties: RawObject): Ours {
  const [kind, id] = [own(properties, kindProperty), own(properties, idProperty)];
  if (computedKinds.includes(kind as (typeof computedKinds)[number])) return { is: 'computed' };
  if (typeof kind !== 'string' || typeof id !== 'string' || id === '' || id.length > 200) return { is: 'foreign' };
  const version = versionIn(own(properties, versionProperty));
  const named = own(properties, fieldsProperty);
  // Of a file that does not name the fields of its things, the properties that are known are taken.
  const isWhole = Array.isArray(named);
  const fields = Object.entries(properties).filter(([field]) =>
    isWhole ? named.includes(field) : !field.startsWith(ourPrefix),
  );
  const bodies = upgradedBodies(kind, version, { ...Object.fromEntries(fields), kind, id });
  if (!bodies) {
    const [why, whatToDo] = [message('exchange.piece.fields'), message('exchange.remedy.fixFile')];
    return { is: 'unreadable', why, whatToDo };
  }
  if (!bodies.every((body) => isKind(String(body.kind)))) return newerKind(kind, version);
  const things = bodies.filter((body) => exchangedKinds.includes(body.kind as ExchangedKind));
  if (things.length === 0) return { is: 'foreign' };
  const marks = Object.fromEntries(Object.entries(properties).filter(([field]) => field.startsWith(ourPrefix)));
  return {
    is: 'things',
    things: things.map(({ kind: is, id: called, ...rest }) => ({
      kind: is as ExchangedKind,
      id: String(called),
      fields: { ...rest, ...marks },
      isWhole,
    })),
  };
}

function upgradedBodies(kind: string, version: number, body: Body): readonly Body[] | null {
  try {
    return upgrade(kind, version, body);
  } catch {
    // A step of ours can't bear what the file makes of the body.
    return null;
  }
}

function newerKind(kind: string, version: number): Ours {
  const newer = version > bodyVersion;
  return {
    is: 'unreadable',
    why: message('exchange.piece.unknownKind', { kind: shownText(kind), newer }),
    whatToDo: message('exchange.remedy.update'),
  };
}

/** Whether a property of a feature is a field of its thing, and no mark of ours. */
export function isField(property: string): boolean {
  return !property.startsWith(ourPrefix) && property !== 'kind' && property !== 'id';
}
