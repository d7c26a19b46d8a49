/** Makers of fields: each says what the field holds, for the compiler and for everything that walks a description. */
import type { Message } from '../words/message.ts';
import type {
  AnyField,
  AnyKind,
  Bounds,
  Cases,
  Field,
  FieldFacts,
  Fields,
  Flat,
  ListShape,
  LonLat,
  NumberShape,
  OptionalField,
  ThingFrom,
  Unit,
  ValueOf,
  ValuesOf,
} from './describe.ts';

/** Lengths and counts that keep endless data out; no property comes near them. */
export const most = {
  id: 200,
  name: 200,
  text: 20_000,
  filePath: 4096,
  vertices: 50_000,
  ids: 10_000,
  things: 200_000,
};

/** Text of any length that a person writes. */
export function text(facts: FieldFacts<string> = {}): Field<string> {
  return textField({ most: most.text, blank: true }, facts);
}

/** The name of a thing; never blank. */
export function name(facts: FieldFacts<string> = {}): Field<string> {
  return textField({ most: most.name, blank: false }, facts);
}

/** A short text that may be empty: the name of something else as it once was, a letter. */
export function shortText(facts: FieldFacts<string> = {}): Field<string> {
  return textField({ most: most.name, blank: true }, facts);
}

/** A key by which something else is found; never empty, in a file neither. */
export function key(facts: FieldFacts<string> & { readonly most?: number } = {}): Field<string> {
  const { most: longest = most.id, ...rest } = facts;
  return textField({ most: longest, blank: false, neverEmpty: true }, rest);
}

/** Text of this form. `mustBe` ends "It must be ...". */
export function patterned(of: RegExp, mustBe: Message, facts: FieldFacts<string> = {}): Field<string> {
  return { shape: { as: 'text', most: 100, blank: false, neverEmpty: true, pattern: { of, mustBe } }, ...facts };
}

export function textField(
  { most, blank, neverEmpty = false }: { most: number; blank: boolean; neverEmpty?: boolean },
  facts: FieldFacts<string> = {},
): Field<string> {
  return { shape: { as: 'text', most, blank, neverEmpty }, ...facts };
}

export function flag(facts: FieldFacts<boolean> = {}): Field<boolean> {
  return { shape: { as: 'flag' }, ...facts };
}

/** One of some values. What people read for each stands in the catalogue of words. */
export function choice<const C extends readonly (string | number)[]>(
  choices: C,
  facts: FieldFacts<C[number]> = {},
): Field<C[number]> {
  return { shape: { as: 'choice', choices }, ...facts };
}

interface NumberFacts extends FieldFacts<number> {
  /** Least and largest value. */
  readonly min?: number;
  readonly max: number;
  /** The least value itself is left out: "above 0". */
  readonly above?: true;
  readonly decimals?: number;
  /** What a file may hold, where that is not "nothing below 0, nothing above 1,000,000,000". */
  readonly file?: Partial<Bounds>;
}

/** A figure in a unit. */
export function number(unit: Unit, facts: NumberFacts): Field<number> {
  return numberField(unit, facts, { whole: false, file: { min: 0, max: 1e9 }, decimals: 2 });
}

/** A count. */
export function whole(facts: NumberFacts & { readonly unit?: Unit }): Field<number> {
  const { unit = '', ...rest } = facts;
  return numberField(unit, rest, { whole: true, file: { min: 0, max: 10_000 }, decimals: 0 });
}

export function lengthM(facts: NumberFacts): Field<number> {
  return number('m', facts);
}

/** What a file may hold of a figure that the arithmetic divides by. */
export const neverNothing: Partial<Bounds> = { above: true };

function numberField(
  unit: Unit,
  { min = 0, max, above, decimals, file, ...facts }: NumberFacts,
  usual: Pick<NumberShape, 'whole' | 'decimals'> & { readonly file: Bounds },
): Field<number> {
  const shape: NumberShape = {
    as: 'number',
    unit,
    whole: usual.whole,
    bounds: above ? { min, max, above } : { min, max },
    file: { ...usual.file, ...file },
    decimals: decimals ?? usual.decimals,
  };
  return { shape, ...facts };
}

/** ISO 8601 date, or local date and time. */
export function date(facts: FieldFacts<string> = {}): Field<string> {
  return { shape: { as: 'date' }, ...facts };
}

/** Longitude and latitude in degrees. */
export function place(facts: FieldFacts<LonLat> = {}): Field<LonLat> {
  return { shape: { as: 'place' }, ...facts };
}

/** Places in order, `least` of them or more. */
export function path(least: number, facts: FieldFacts<readonly LonLat[]> = {}): Field<readonly LonLat[]> {
  return { shape: { as: 'path', least, most: most.vertices }, ...facts };
}

/** The id of a thing that must be there when the field is set. */
export function reference(to: string, facts: FieldFacts<string> = {}): Field<string> {
  return { shape: { as: 'reference', to, mustBeThere: true }, ...facts };
}

/** The id of a thing that may be gone since, or that the program's own library holds. */
export function looseReference(to: string, facts: FieldFacts<string> = {}): Field<string> {
  return { shape: { as: 'reference', to, mustBeThere: false }, ...facts };
}

/** The name of a kind. `K` says which, for the compiler. */
export function kindName<K extends string>(facts: FieldFacts<K> = {}): Field<K> {
  return { shape: { as: 'kindName' }, ...facts };
}

/** Values in order. `mustBe` ends "It must be ...". */
export function list<F>(
  of: Field<F>,
  { most, mustBe, fills, ...facts }: FieldFacts<readonly F[]> & Pick<ListShape, 'most' | 'mustBe' | 'fills'>,
): Field<readonly F[]> {
  return { shape: { as: 'list', of, most, mustBe, ...(fills && { fills }) }, ...facts };
}

/** Exactly these values in order. */
export function tuple<const T extends readonly AnyField[]>(
  of: T,
  mustBe: Message,
): Field<{ readonly [I in keyof T]: ValueOf<T[I]> }> {
  return { shape: { as: 'tuple', of: of, mustBe } };
}

/** A group of fields. */
export function record<F extends Fields>(
  fields: F,
  { mustBe, ...facts }: FieldFacts<ValuesOf<F>> & { readonly mustBe?: Message } = {},
): Field<ValuesOf<F>> {
  return { shape: { as: 'record', fields, mustBe }, ...facts };
}

export type TaggedOf<T extends string, C extends Cases> = {
  readonly [K in keyof C]: Flat<{ readonly [P in T]: K } & ValuesOf<C[K]>>;
}[keyof C];

/** One of several groups of fields, told apart by the value of `tag`. */
export function tagged<const T extends string, const C extends Cases>(
  tag: T,
  cases: C,
  { mustBe, ...facts }: FieldFacts<TaggedOf<T, C>> & { readonly mustBe: Message },
): Field<TaggedOf<T, C>> {
  return { shape: { as: 'tagged', tag, cases, mustBe }, ...facts };
}

/** A value, or null for "not known" or "none". */
export function orNone<T>(of: Field<T>, facts: FieldFacts<T | null> = {}): Field<T | null> {
  const { shape, default: _, optional: _o, holds: _h, ...told } = of;
  return { ...told, shape: { as: 'orNone', of: { shape } }, ...facts };
}

/** A value of one of several forms. */
export function either<const T extends readonly AnyField[]>(
  of: T,
  { mustBe, ...facts }: FieldFacts<ValueOf<T[number]>> & { readonly mustBe: Message },
): Field<ValueOf<T[number]>> {
  return { shape: { as: 'either', of: of, mustBe }, ...facts };
}

/** The same field with other things told of it. */
export function like<T>(field: Field<T>, facts: FieldFacts<NoInfer<T>>): Field<T> {
  return { ...field, ...facts };
}

/** A field that need not be there. */
export function optional<T>(of: Field<T>): OptionalField<T> {
  return { ...of, optional: true };
}

/** A whole thing of one of these kinds. */
export function thing<const D extends readonly AnyKind[]>(of: D, mustBe: Message): Field<ThingFrom<D[number]>> {
  return { shape: { as: 'thing', of, needs: [], mustBe } };
}

/** A whole thing of a kind with fields that it may leave out elsewhere. */
export function thingWith<D extends AnyKind, const N extends string>(
  of: D,
  needs: readonly N[],
  mustBe: Message,
): Field<ThingFrom<D> & { readonly [P in N]-?: ThingFrom<D> extends { readonly [Q in P]?: infer V } ? V : never }> {
  return { shape: { as: 'thing', of: [of], needs, mustBe } };
}
