import { conductorById } from '../electrical/conductors/conductorLibrary.ts';
import { fieldsOf } from '../kinds/allKinds.ts';
import { choicesOf } from '../kinds/describe.ts';
import { choiceCalled, fieldCalled } from '../kinds/words.ts';
import type { Project } from '../model/project.ts';
import type { Kind, Thing } from '../model/things.ts';
import { type Message, message } from '../words/message.ts';

/** One value that is not what it was. */
export interface ChangedField {
  readonly field: Message;
  readonly before: Message;
  readonly after: Message;
}

/** Not values that people look at: where a thing is is told in metres, and its state by itself. */
const passedOver = new Set(['kind', 'id', 'status', 'path', 'at', 'place', 'places', 'planned', 'things', 'thumbId']);

/** The values in which two states of a thing differ. */
export function changedFields(before: Thing, after: Thing, project: Project): ChangedField[] {
  const [from, to] = [before, after] as unknown as readonly Readonly<Record<string, unknown>>[];
  const fields = [...new Set([...Object.keys(from!), ...Object.keys(to!)])].filter((field) => !passedOver.has(field));
  return fields.flatMap((field) => {
    if (isSame(from![field], to![field])) return [];
    const said = (value: unknown) => valueInWords(before.kind, field, value, project);
    return [{ field: nameOf(before, field), before: said(from![field]), after: said(to![field]) }];
  });
}

/** What a field is called; by its code where a newer version made it. */
function nameOf({ kind }: Thing, field: string): Message {
  return Object.hasOwn(fieldsOf(kind), field)
    ? fieldCalled(kind, field)
    : message('record.names.named', { name: field });
}

/** Figures that differ by the rounding of a computation only are the same: less than a micrometre or a microvolt. */
function isSame(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) < 1e-6;
  return JSON.stringify(a) === JSON.stringify(b);
}

function valueInWords(kind: Kind, field: string, value: unknown, project: Project): Message {
  if (value === null || value === undefined || value === '') return message('record.values.nothing');
  const choices: readonly unknown[] = Object.hasOwn(fieldsOf(kind), field) ? choicesOf(fieldsOf(kind)[field]!) : [];
  if (choices.includes(value)) return choiceCalled(kind, field, value as string | number);
  if (typeof value === 'boolean') return message(value ? 'record.values.yes' : 'record.values.no');
  if (typeof value === 'number') return numberInWords(field, value);
  if (typeof value === 'string') {
    return field.endsWith('Id') ? referredName(value, project) : message('record.values.text', { text: value });
  }
  return Array.isArray(value)
    ? message('record.values.entries', { count: value.length })
    : message('record.values.figures');
}

function numberInWords(field: string, value: number): Message {
  if (field.endsWith('Mm')) return message('record.values.millimetres', { valueMm: value });
  if (field.endsWith('M')) return message('record.values.length', { lengthM: value });
  if (field.endsWith('V')) return message('record.values.volts', { volts: value });
  return message('record.values.figure', { value });
}

function referredName(id: string, project: Project): Message {
  const tables = [project.fenceType, project.fenceLine, project.gateway, project.energiser, project.conductor];
  const thing = tables.flatMap((table) => table.get(id) ?? [])[0];
  if (!thing) return conductorById(id, [])?.name ?? message('record.names.named', { name: id });
  return message('record.names.named', { name: thing.name });
}
