import { describedAs, fieldsOf } from '../../../kinds/allKinds.ts';
import { type AnyField, unitOf } from '../../../kinds/describe.ts';
import { fieldCalled } from '../../../kinds/words.ts';
import { message } from '../../../words/message.ts';
import type { Project } from '../../project.ts';
import { refTo } from '../../refTo.ts';
import type { Kind, Thing } from '../../things.ts';
import type { Refusal } from './edit.ts';
import { fieldRules, type Rule } from './fieldRules.ts';
import { whyNotFound } from './find.ts';

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
    if (!rule) return { code: 'notValid', message: message('edits.fields.unknown', { kind, field }) };
    const mustBe = rule(value);
    if (mustBe) {
      const given = typeof value === 'object' && value !== null ? null : String(value).slice(0, 60);
      const values = { kind, field: fieldCalled(kind, field), given, mustBe };
      return { code: 'notValid', message: message('edits.fields.notValid', values) };
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
    const { most, by } = limit;
    const { advice } = atMost;
    const fields = { field: fieldCalled(thing.kind, name), byField: fieldCalled(by.kind, atMost.field) };
    const tooLarge = {
      kind: thing.kind,
      ...fields,
      value,
      unit,
      by: refTo(by as { kind: Kind; name?: string }),
      most,
      advice,
    };
    return { code: 'tooLarge', message: message('edits.fields.tooLarge', tooLarge) };
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
    return { code: 'nameTaken', message: message('edits.fields.nameTaken', { kind, name }) };
  }
  return null;
}
