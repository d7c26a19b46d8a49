import { describedAs, fieldsOf } from '../../../kinds/allKinds.ts';
import { type AnyField, unitOf } from '../../../kinds/describe.ts';
import type { Project } from '../../project.ts';
import type { Kind, Thing } from '../../things.ts';
import type { Refusal } from './edit.ts';
import { fieldRules, inWords, type Rule } from './fieldRules.ts';
import { called, kindWords, whyNotFound } from './find.ts';

/**
 * Why these fields can't be given to a thing of this kind (`id` null: a new one). `notValid` (a value out of its
 * bounds, or no such field), `notFound` (what it names is not there), `nameTaken`.
 */
export function whyNotFields(
  project: Project,
  kind: Kind,
  id: string | null,
  values: Readonly<Record<string, unknown>>,
): Refusal | null {
  const rules = fieldRules[kind] as Readonly<Record<string, Rule>>;
  for (const [field, value] of Object.entries(values)) {
    const rule = Object.hasOwn(rules, field) ? rules[field] : undefined;
    if (!rule) return { code: 'notValid', message: `A ${kindWords[kind]} has no "${field}".` };
    const mustBe = rule(value);
    if (mustBe) {
      const given = typeof value === 'object' && value !== null ? 'what was given' : `"${String(value).slice(0, 60)}"`;
      const message = `The ${inWords(field)} of the ${kindWords[kind]} can't be ${given}. It must be ${mustBe}.`;
      return { code: 'notValid', message };
    }
    const missing = whyNotReferred(project, fieldsOf(kind)[field]!, value);
    if (missing) return missing;
  }
  return typeof values.name === 'string' ? whyNotName(project, kind, id, values.name) : null;
}

/** `notFound`: the thing that a field names is not there. */
function whyNotReferred(project: Project, { shape }: AnyField, value: unknown): Refusal | null {
  if (shape.as !== 'reference' || !shape.mustBeThere || value === undefined) return null;
  return whyNotFound(project, shape.to as Kind, value as string);
}

/**
 * `tooLarge`: a figure of these is more than the thing it hangs on allows (a bow wider than its opening). `thing`: the whole
 * thing as it would be.
 */
export function whyNotAtMost(
  project: Project,
  thing: Thing,
  values: Readonly<Record<string, unknown>>,
): Refusal | null {
  for (const [name, { atMost, shape }] of Object.entries(fieldsOf(thing.kind))) {
    const value = values[name];
    if (!atMost || typeof value !== 'number') continue;
    const limit = limitOf(project, thing, name);
    if (!limit || value <= limit.most) continue;
    const unit = unitOf(shape);
    const message = `The ${inWords(name)} of the ${kindWords[thing.kind]} can't be ${value} ${unit}: ${called(limit.by)} has a ${inWords(atMost.field)} of ${limit.most} ${unit}. ${atMost.advice}`;
    return { code: 'tooLarge', message };
  }
  return null;
}

/** The most that the thing which another hangs on allows a field of it, and that thing; null: no such limit. */
export function limitOf(
  project: Project,
  thing: Thing,
  field: string,
): { readonly most: number; readonly by: Thing } | null {
  const { atMost } = fieldsOf(thing.kind)[field]!;
  if (!atMost) return null;
  const { shape } = fieldsOf(thing.kind)[atMost.through]!;
  const id = (thing as unknown as Readonly<Record<string, unknown>>)[atMost.through];
  const by = shape.as === 'reference' ? project[shape.to as Kind].get(id as string) : undefined;
  const most = (by as unknown as Readonly<Record<string, unknown>> | undefined)?.[atMost.field];
  return by && typeof most === 'number' ? { most, by } : null;
}

/** `nameTaken`: another gateway, switch or energiser is called that already. */
export function whyNotName(project: Project, kind: Kind, id: string | null, name: string): Refusal | null {
  if (!describedAs(kind).uniqueName) return null;
  for (const other of project[kind].values() as Iterable<Thing>) {
    if (other.id === id || !('name' in other) || other.name.trim() !== name.trim()) continue;
    const message = `There is a ${kindWords[kind]} called ${name} already. Names that people act on must differ: choose another.`;
    return { code: 'nameTaken', message };
  }
  return null;
}
