import { conductorById } from '../electrical/conductors/conductorLibrary.ts';
import { fieldsOf } from '../kinds/allKinds.ts';
import { fieldCalled } from '../kinds/words.ts';
import type { Project } from '../model/project.ts';
import type { Thing } from '../model/things.ts';
import { figures } from '../words/figures.ts';
import { formatTape, formatVoltage, type Units } from '../words/numbers/write.ts';
import { counted } from '../words/text.ts';

/** One value that is not what it was. */
export interface ChangedField {
  readonly field: string;
  readonly before: string;
  readonly after: string;
}

/** Not values that people look at: where a thing is is told in metres, and its state by itself. */
const passedOver = new Set(['kind', 'id', 'status', 'path', 'at', 'place', 'places', 'planned', 'things', 'thumbId']);

/** The values in which two states of a thing differ, in words and units. */
export function changedFields(before: Thing, after: Thing, project: Project, units: Units): ChangedField[] {
  const [from, to] = [before, after] as unknown as readonly Readonly<Record<string, unknown>>[];
  const fields = [...new Set([...Object.keys(from!), ...Object.keys(to!)])].filter((field) => !passedOver.has(field));
  return fields.flatMap((field) => {
    if (isSame(from![field], to![field])) return [];
    const words = (value: unknown) => valueInWords(field, value, project, units);
    return [{ field: nameOf(before, field, units), before: words(from![field]), after: words(to![field]) }];
  });
}

/** What a field is called; by its code where a newer version made it. */
function nameOf({ kind }: Thing, field: string, units: Units): string {
  return Object.hasOwn(fieldsOf(kind), field) ? figures(units).say(fieldCalled(kind, field)) : field;
}

/** Figures that differ by the rounding of a computation only are the same: less than a micrometre or a microvolt. */
function isSame(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) < 1e-6;
  return JSON.stringify(a) === JSON.stringify(b);
}

function valueInWords(field: string, value: unknown, project: Project, units: Units): string {
  if (value === null || value === undefined || value === '') return 'nothing';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return numberInWords(field, value, units);
  if (typeof value === 'string') return field.endsWith('Id') ? referredName(value, project) : value;
  return Array.isArray(value) ? `${counted(value.length, 'entry', 'entries')}` : 'other figures';
}

function numberInWords(field: string, value: number, units: Units): string {
  if (field.endsWith('Mm')) return `${value} mm`;
  if (field.endsWith('M')) return formatTape(value, units);
  if (field.endsWith('V')) return formatVoltage(value);
  return String(value);
}

function referredName(id: string, project: Project): string {
  const tables = [project.fenceType, project.fenceLine, project.gateway, project.energiser, project.conductor];
  for (const table of tables) {
    const thing = table.get(id);
    if (thing) return thing.name;
  }
  return conductorById(id, [])?.name ?? id;
}
