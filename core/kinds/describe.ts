/**
 * What the description of a kind is made of: plain data, from which its type, schema, rules, defaults, form fields and
 * columns are derived. A field says what it holds (`Shape`) and how it may be set (`FieldFacts`).
 */

import type { units } from '../words/en/kinds/units.ts';
import type { Message } from '../words/message.ts';

/** Longitude and latitude in degrees, WGS 84. */
export type LonLat = readonly [lon: number, lat: number];

/** What a figure is counted in; empty where it has no unit. */
export type Unit = keyof typeof units;

/** Least and largest value; `above`: the least itself is left out. */
export interface Bounds {
  readonly min: number;
  readonly max: number;
  readonly above?: boolean;
}

/**
 * What a field can hold. Where a bound stands twice, the one in `file` is the wider: it only keeps nonsense out of what is
 * read (files, history, messages of whole things), so that a bound which is drawn tighter later leaves no file unreadable.
 */
export type Shape =
  | TextShape
  | NumberShape
  | { readonly as: 'flag' }
  | { readonly as: 'choice'; readonly choices: readonly (string | number)[] }
  | { readonly as: 'date' }
  | { readonly as: 'place' }
  | { readonly as: 'path'; readonly least: number; readonly most: number }
  | ReferenceShape
  | { readonly as: 'kindName' }
  | ListShape
  | { readonly as: 'tuple'; readonly of: readonly AnyField[]; readonly mustBe: Message }
  | { readonly as: 'record'; readonly fields: Fields; readonly mustBe?: Message | undefined }
  | { readonly as: 'tagged'; readonly tag: string; readonly cases: Cases; readonly mustBe: Message }
  | { readonly as: 'orNone'; readonly of: AnyField }
  | { readonly as: 'either'; readonly of: readonly AnyField[]; readonly mustBe: Message }
  | ThingShape;

export interface TextShape {
  readonly as: 'text';
  readonly most: number;
  /** May be empty or blank. */
  readonly blank: boolean;
  /** Not even a file may hold it empty: things are found by it. */
  readonly neverEmpty: boolean;
  readonly pattern?: { readonly of: RegExp; readonly mustBe: Message };
}

export interface NumberShape {
  readonly as: 'number';
  readonly unit: Unit;
  readonly whole: boolean;
  /** What may be typed, imported and set. */
  readonly bounds: Bounds;
  readonly file: Bounds;
  /** Decimals that a form shows. */
  readonly decimals: number;
}

export interface ListShape {
  readonly as: 'list';
  readonly of: AnyField;
  readonly most: number;
  readonly mustBe: Message;
  /** The two counts beside it whose product is its length: columns and rows. */
  readonly fills?: readonly [string, string];
}

/** The id of another thing. */
export interface ReferenceShape {
  readonly as: 'reference';
  readonly to: string;
  /** It must be there when the field is set; otherwise it may be gone, or stand outside the property. */
  readonly mustBeThere: boolean;
}

/** A whole thing of one of these kinds, kept inside another. */
export interface ThingShape {
  readonly as: 'thing';
  readonly of: readonly AnyKind[];
  /** Fields that it may leave out elsewhere and has to have here. */
  readonly needs: readonly string[];
  readonly mustBe: Message;
}

/** A bound that another thing sets: at most its field's value. */
export interface AtMost {
  /** The field that names the other thing. */
  readonly through: string;
  /** The other thing's field. */
  readonly field: string;
  /** What to do instead. */
  readonly advice: Message;
}

/** How a field may be set. What people are told of it stands in the catalogue of words: see `words.ts`. */
export interface FieldFacts<T> {
  /** Several lines of text. */
  readonly long?: true;
  /** What a new thing has; say where it comes from beside it. */
  readonly default?: T;
  /** It has an edit of its own, because other things hang on it or it needs room. */
  readonly ownEdit?: true;
  readonly atMost?: AtMost;
  /** Tables list it: under its own name with underscores, or under this one. */
  readonly column?: true | string;
}

/** One field. `T` is what it holds, for the compiler alone: nothing of it is there when the program runs. */
export interface Field<T> extends FieldFacts<T> {
  readonly shape: Shape;
  /** It need not be there at all (things that older versions wrote). */
  readonly optional?: boolean;
  readonly holds?: (value: T) => T;
}

/** A field that need not be there. */
export interface OptionalField<T> extends Field<T> {
  readonly optional: true;
}

// biome-ignore lint/suspicious/noExplicitAny: a field of whatever it holds; `unknown` would not take them all.
export type AnyField = Field<any>;
export type Fields = Readonly<Record<string, AnyField>>;
export type Cases = Readonly<Record<string, Fields>>;

export type ValueOf<F> = F extends Field<infer T> ? T : never;

/** What a set of fields holds. */
export type ValuesOf<F extends Fields> = Flat<
  {
    readonly [P in keyof F as F[P] extends { readonly optional: true } ? never : P]: ValueOf<F[P]>;
  } & {
    readonly [P in keyof F as F[P] extends { readonly optional: true } ? P : never]?: ValueOf<F[P]>;
  }
>;

export type Flat<T> = { [P in keyof T]: T[P] };

/** The lists that a kind can stand in. */
export type ListName =
  /** What is drawn, measured or said of the property itself. */
  | 'drawing'
  /** What is recorded of things that are built. */
  | 'record'
  /** What the order is worked out with. */
  | 'order'
  /** Kept in a plan: the drawing without what says what once was. */
  | 'keptPlan'
  /** Frozen at a handover. */
  | 'handover'
  /** Told in the changes since a handover. */
  | 'changes'
  /** Carried whole by the map files of this program. */
  | 'exchange'
  /** Made into the network. */
  | 'network'
  /** Counted or priced in the order. */
  | 'counted'
  /** Added by itself, with no edit of its own. */
  | 'plain'
  /** Has no place: a property with nothing else in it can still be given one. */
  | 'placeless';

interface KindFacts<F extends Fields, L extends ListName, I extends string> {
  /** What its things are called until the user names them: "G" for "G12". */
  readonly prefix?: string;
  /** People act on its name in the field, so no two may share one. */
  readonly uniqueName?: true;
  /** There is only one, with this id. */
  readonly onlyId?: I;
  readonly fields: F;
  readonly lists: readonly L[];
}

export interface KindDescription<K extends string, F extends Fields, L extends ListName, I extends string = string>
  extends KindFacts<F, L, I> {
  readonly kind: K;
}

// biome-ignore lint/suspicious/noExplicitAny: a description of whatever fields.
export type AnyKind = KindDescription<string, any, ListName, string>;

/** The thing that a description describes. */
export type ThingFrom<D> =
  D extends KindDescription<infer K, infer F, ListName, infer I>
    ? Flat<{ readonly kind: K; readonly id: I } & ValuesOf<F>>
    : never;

/** Describes a kind. What it and its fields are called stands in the catalogue of words. */
export function kind<
  const K extends string,
  F extends Fields,
  const L extends ListName = never,
  const I extends string = string,
>(name: K, facts: KindFacts<F, L, I>): KindDescription<K, F, L, I> {
  return { kind: name, ...facts };
}

/** Of some kinds, those that stand in a list. */
export type InList<D, N extends ListName> =
  D extends KindDescription<string, Fields, infer L, string> ? (N extends L ? D : never) : never;

/** The unit of a figure, with or without "or none". */
export function unitOf(shape: Shape): Unit {
  if (shape.as === 'orNone') return unitOf(shape.of.shape);
  return shape.as === 'number' ? shape.unit : '';
}

/** The lists of a group whose length two counts beside them say. */
export function fillingLists(fields: Fields): { readonly name: string; readonly counts: readonly [string, string] }[] {
  return Object.entries(fields).flatMap(([name, { shape }]) =>
    shape.as === 'list' && shape.fills ? [{ name, counts: shape.fills }] : [],
  );
}

/** The choices of a field. */
export function choicesOf(field: Pick<AnyField, 'shape'>): readonly (string | number)[] {
  const { shape } = field;
  if (shape.as === 'orNone') return choicesOf(shape.of);
  return shape.as === 'choice' ? shape.choices : [];
}

/** What the fields of a new thing are, as far as their descriptions say; for a group of figures, group by group. */
export function defaultsOf<F extends Fields>(fields: F): Partial<ValuesOf<F>> {
  const known = Object.entries(fields).flatMap(([name, field]) => {
    const value = defaultOf(field);
    return value === undefined ? [] : [[name, value] as const];
  });
  return Object.fromEntries(known) as Partial<ValuesOf<F>>;
}

/** A new thing: what its description says, and over it what is given; fields that neither says are left out. */
export function newThing<D extends AnyKind>(described: D, given: Partial<ThingFrom<D>>): ThingFrom<D> {
  const values: Readonly<Record<string, unknown>> = { ...defaultsOf(described.fields as Fields), ...given };
  const inOrder = Object.keys(described.fields as Fields).filter((name) => values[name] !== undefined);
  const { onlyId = values.id } = described;
  return {
    kind: described.kind,
    id: onlyId,
    ...Object.fromEntries(inOrder.map((name) => [name, values[name]])),
  } as ThingFrom<D>;
}

function defaultOf(field: AnyField): unknown {
  if (field.default !== undefined || field.shape.as !== 'record') return field.default;
  const figures = defaultsOf(field.shape.fields);
  return Object.keys(figures).length > 0 ? figures : undefined;
}
