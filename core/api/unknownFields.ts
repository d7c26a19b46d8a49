import type * as z from 'zod';
import { type Message, message } from '../words/message.ts';
import { unknownLimits } from './editLimits.ts';
import { thingSchema } from './thingSchemas.ts';

/** Something in a thing that this version does not know: the path of its field, and what stands there. */
export interface UnknownField {
  readonly path: string;
  readonly value: unknown;
}

/** Finds what a value of a schema holds beyond it. Null: a value of that schema can't hold more. */
type Find = ((value: unknown, path: string, found: UnknownField[]) => void) | null;

/** What the things that a schema knows may hold beyond it, in the order in which it stands there. */
export function unknownFields(thing: object): readonly UnknownField[] {
  const found: UnknownField[] = [];
  findInThing?.(thing, '', found);
  return found;
}

/**
 * Why a thing may not come in from outside with what it holds beyond what this version knows, as the end of a sentence about
 * it; null: it may. `before`: the thing as it is here, which may hold as much as it does.
 */
export function whyNotUnknown(thing: object, before: object | null = null): Message | null {
  const found = unknownFields(thing);
  if (found.length === 0) return null;
  if (depthOf(found) > unknownLimits.depth) return message('host.unknown.nests', { most: unknownLimits.depth });
  const bytes = bytesOf(found);
  if (bytes <= unknownLimits.bytes || (before !== null && isAsDeep(before) && bytes <= bytesOf(unknownFields(before))))
    return null;
  const [kb, mostKb] = [inKb(bytes), inKb(unknownLimits.bytes)];
  return message('host.unknown.takes', { kb, mostKb });
}

function inKb(bytes: number): number {
  return Math.ceil(bytes / 1024);
}

function isAsDeep(thing: object): boolean {
  return depthOf(unknownFields(thing)) <= unknownLimits.depth;
}

/** Bytes of JSON, about. */
function bytesOf(fields: readonly UnknownField[]): number {
  return fields.reduce((bytes, { path, value }) => bytes + path.length + (JSON.stringify(value) ?? '').length, 0);
}

/** How deep the deepest of these nests; a plain value 0. Counts without calling itself, and no further than it must. */
function depthOf(fields: readonly UnknownField[]): number {
  let level: unknown[] = fields.map(({ value }) => value);
  for (let depth = 0; ; depth++) {
    level = level.flatMap((value): unknown[] =>
      typeof value === 'object' && value !== null ? Object.values(value) : [],
    );
    if (level.length === 0 || depth > unknownLimits.depth) return depth;
  }
}

function finderOf(schema: z.core.$ZodType): Find {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'nullable':
    case 'optional':
    case 'nonoptional':
    case 'readonly':
      return finderOf(def.innerType);
    case 'array':
      return inList(finderOf(def.element));
    case 'union':
      return inFirstThatFits(def.options.flatMap(optionsOf));
    case 'object':
      return inObject(def.shape);
    case 'custom':
      return (value, path, found) => found.push({ path, value });
    default:
      return null;
  }
}

function inList(find: Find): Find {
  return (
    find &&
    ((value, path, found) => {
      if (!Array.isArray(value)) return;
      for (const [i, each] of value.entries()) find(each, `${path}.${i}`, found);
    })
  );
}

function inObject(shape: z.core.$ZodShape): Find {
  const known = new Map(Object.entries(shape).map(([field, schema]) => [field, finderOf(schema)]));
  return (value, path, found) => {
    if (typeof value !== 'object' || value === null) return;
    for (const [field, each] of Object.entries(value)) {
      const at = path === '' ? field : `${path}.${field}`;
      if (known.has(field)) known.get(field)?.(each, at, found);
      else found.push({ path: at, value: each });
    }
  };
}

interface Option {
  /** Fields that have this very value in all that is of this option. */
  readonly literals: readonly (readonly [field: string, values: readonly unknown[]])[];
  readonly find: Find;
}

/** The options of a union, those of unions within it too. */
function optionsOf(schema: z.core.$ZodType): Option[] {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  if (def.type === 'union') return def.options.flatMap(optionsOf);
  const fields = def.type === 'object' ? Object.entries(def.shape) : [];
  const literals = fields.flatMap(([field, { _zod }]) => {
    const { def: of } = { def: _zod.def as z.core.$ZodTypeDef & { readonly values?: readonly unknown[] } };
    return of.type === 'literal' && of.values ? [[field, of.values] as const] : [];
  });
  return [{ literals, find: finderOf(schema) }];
}

function inFirstThatFits(options: readonly Option[]): Find {
  const holding = options.filter(({ find }) => find);
  if (holding.length === 0) return null;
  return (value, path, found) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return;
    const fields = value as Readonly<Record<string, unknown>>;
    const fits = holding.find(({ literals }) => literals.every(([field, values]) => values.includes(fields[field])));
    fits?.find?.(value, path, found);
  };
}

const findInThing = finderOf(thingSchema);
