import * as z from 'zod';
import { allKinds, type Kind, kinds, type Thing, type ThingOf } from '../kinds/allKinds.ts';
import {
  type AnyField,
  type AnyKind,
  type Bounds,
  type Fields,
  fillingLists,
  type NumberShape,
  type Shape,
  type TextShape,
} from '../kinds/describe.ts';
import { most } from '../kinds/fields.ts';
import { isKind } from '../model/project.ts';
import { plainWords } from '../words/figures.ts';
import { object } from './keptObject.ts';

/**
 * What each kind of thing must look like wherever it comes in from outside: a message of a window, a project file. Derived
 * from the descriptions in `core/kinds`. The bounds are the wide ones, which only keep out nonsense and endless data: what a
 * file holds stays readable when an edit would no longer set it (`core/model/edits/support/fieldRules.ts` has the others), and
 * whether a drawing is a good one is for `core/checks`.
 */

const id = z.string().min(1).max(most.id);
const lonLat = z.tuple([z.number().min(-180).max(180), z.number().min(-90).max(90)]);
const isoDate = z.union([
  z.iso.date(),
  z.iso.datetime({ local: true, offset: true }),
  z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d$/),
]);

/** The schema of a thing of a described kind. */
export function schemaOfKind(kind: AnyKind, needs: readonly string[] = []): z.ZodObject {
  return object({
    kind: z.literal(kind.kind),
    id: kind.onlyId === undefined ? id : z.literal(kind.onlyId),
    ...schemasOf(kind.fields as Fields, needs),
  });
}

/** The schema of what one field holds. */
export function schemaOf({ shape, optional = false }: Pick<AnyField, 'shape' | 'optional'>): z.ZodType {
  const schema = schemaOfShape(shape);
  return optional ? schema.exactOptional() : schema;
}

function schemasOf(fields: Fields, needs: readonly string[] = []): Record<string, z.ZodType> {
  const needed = ([name, { shape, optional = false }]: [string, AnyField]) =>
    [name, schemaOf({ shape, optional: optional && !needs.includes(name) })] as const;
  return Object.fromEntries(Object.entries(fields).map(needed));
}

function schemaOfShape(shape: Shape): z.ZodType {
  switch (shape.as) {
    case 'text':
      return textSchema(shape);
    case 'number':
      return numberSchema(shape);
    case 'flag':
      return z.boolean();
    case 'choice':
      return z.literal(shape.choices);
    case 'date':
      return isoDate;
    case 'place':
      return lonLat;
    case 'path':
      return z.array(lonLat).min(shape.least).max(shape.most);
    case 'reference':
      return id;
    case 'kindName':
      return z.enum(kinds);
    case 'list':
      return z.array(listedSchema(shape.of)).max(shape.most);
    case 'tuple':
      return z.tuple(shape.of.map(schemaOf) as [z.ZodType, ...z.ZodType[]]);
    case 'record':
      return groupSchema(shape.fields);
    case 'tagged':
      return taggedSchema(
        shape.tag,
        Object.entries(shape.cases).map(([tag, fields]) => groupSchema(fields, { [shape.tag]: z.literal(tag) })),
      );
    case 'orNone':
      return schemaOf(shape.of).nullable();
    case 'either':
      return z.union(shape.of.map(schemaOf));
    case 'thing':
      return thingsSchema(shape.of, shape.needs);
  }
}

/** A thing inside of another. */
function thingsSchema(of: readonly AnyKind[], needs: readonly string[]): z.ZodType {
  return taggedSchema(
    'kind',
    of.map((kind) => (needs.length > 0 ? schemaOfKind(kind, needs) : keptSchemaOf(kind))),
  );
}

/** What a list holds; where things of several kinds are kept, those of a kind that a newer version made as well. */
function listedSchema(of: AnyField): z.ZodType {
  const keepsKinds = of.shape.as === 'thing' && of.shape.of.length > 1;
  return keepsKinds ? z.union([schemaOf(of), ofNewerKind]) : schemaOf(of);
}

/** A thing of a kind that a newer version made: kept as it is where whole things are kept, and seen by nobody. */
const ofNewerKind = z.custom<never>(
  (value) => {
    const { kind, id } = (value ?? {}) as { readonly kind?: unknown; readonly id?: unknown };
    return typeof kind === 'string' && !isKind(kind) && typeof id === 'string';
  },
  { error: () => plainWords().host.calls.message.noKind },
);

/** A group of fields; a list that fills a lattice has a value for each of its places. */
function groupSchema(fields: Fields, besides: Record<string, z.ZodType> = {}): z.ZodObject {
  const group = object({ ...besides, ...schemasOf(fields) });
  return fillingLists(fields).reduce(
    (schema, { name, counts }) =>
      schema.refine(
        (value) => (value[name] as readonly unknown[]).length === Number(value[counts[0]]) * Number(value[counts[1]]),
        { error: () => plainWords().host.calls.message.lattice },
      ),
    group,
  );
}

function taggedSchema(tag: string, cases: readonly z.ZodObject[]): z.ZodType {
  return cases.length === 1 ? cases[0]! : z.discriminatedUnion(tag, cases as [z.ZodObject, ...z.ZodObject[]]);
}

function textSchema({ most, neverEmpty, pattern }: TextShape): z.ZodType {
  if (pattern) return z.string().regex(pattern.of);
  return z
    .string()
    .min(neverEmpty ? 1 : 0)
    .max(most);
}

function numberSchema({ whole, file }: NumberShape): z.ZodType {
  return withBounds(whole ? z.int() : z.number(), file);
}

function withBounds(schema: z.ZodNumber, { min, max, above = false }: Bounds): z.ZodNumber {
  return (above ? schema.gt(min) : schema.min(min)).max(max);
}

const madeSchemas = new Map<AnyKind, z.ZodObject>();

/** Made once for each description: things lie in kept plans, handovers and in the ground too. */
function keptSchemaOf(kind: AnyKind): z.ZodObject {
  let schema = madeSchemas.get(kind);
  if (!schema) {
    schema = schemaOfKind(kind);
    madeSchemas.set(kind, schema);
  }
  return schema;
}

export const thingSchemas = Object.fromEntries(allKinds.map((each) => [each.kind, keptSchemaOf(each)])) as unknown as {
  readonly [K in Kind]: z.ZodType<ThingOf<K>>;
};

export const thingSchema = taggedSchema('kind', allKinds.map(keptSchemaOf)) as z.ZodType<Thing>;
