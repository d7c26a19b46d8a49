import { message } from '../../../words/message.ts';
import type { Project } from '../../project.ts';
import type { Kind, Thing } from '../../things.ts';
import type { Refusal } from './edit.ts';
import { fieldRules, inWords, type Rule } from './fieldRules.ts';
import { whyNotFound } from './find.ts';

/** Kinds whose names people act on in the field, so that no two may share one. */
const uniquelyNamed: ReadonlySet<Kind> = new Set(['gateway', 'switch', 'energiser']);

const references: Readonly<Record<string, Kind>> = {
  typeId: 'fenceType',
  lineId: 'fenceLine',
  gatewayId: 'gateway',
  energiserId: 'energiser',
  stageId: 'stage',
  crossingId: 'crossing',
  earthFieldId: 'earthField',
};

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
      const values = { kind, field: inWords(field), given, mustBe };
      return { code: 'notValid', message: message('edits.fields.notValid', values) };
    }
    const referred = references[field];
    const missing = referred && whyNotFound(project, referred, value as string);
    if (missing) return missing;
  }
  return typeof values.name === 'string' ? whyNotName(project, kind, id, values.name) : null;
}

/** `nameTaken`: another gateway, switch or energiser is called that already. */
export function whyNotName(project: Project, kind: Kind, id: string | null, name: string): Refusal | null {
  if (!uniquelyNamed.has(kind)) return null;
  for (const other of project[kind].values() as Iterable<Thing>) {
    if (other.id === id || !('name' in other) || other.name.trim() !== name.trim()) continue;
    return { code: 'nameTaken', message: message('edits.fields.nameTaken', { kind, name }) };
  }
  return null;
}
