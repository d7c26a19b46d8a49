import type { Project } from '../../model/project.ts';
import type { Survey } from '../../survey/types.ts';
import { placeOfProperty } from '../preview/ours.ts';
import { own } from '../preview/raw.ts';
import { allTables } from '../tables/allTables.ts';
import type { Table } from '../tables/table.ts';
import type { AnyFeature } from './featuresOf.ts';

/** What the registers say of a thing, in lines: "width m: 4.2". By feature id ("gateway:g1"). */
export function registerText(project: Project, survey: Survey): Map<string, string> {
  const said = new Map<string, string>();
  for (const table of allTables(project, survey)) {
    const kind = kindOfTable[table.name];
    if (kind) for (const row of table.rows) said.set(`${kind}:${row.id}`, linesOf(table, row.cells));
  }
  return said;
}

/** What `registerText` says of a feature; of another place of a thing, what it says of the thing. Empty: nothing. */
export function saidOf(said: ReadonlyMap<string, string>, { id, properties }: AnyFeature): string {
  const of = own(properties ?? {}, placeOfProperty);
  return said.get(typeof of === 'string' ? of : String(id)) ?? '';
}

const kindOfTable: Readonly<Record<string, string>> = {
  fence_lines: 'fenceLine',
  gateways: 'gateway',
  crossings: 'crossing',
  no_longer_drawn: 'inGround',
  switches: 'switch',
  paddocks: 'paddock',
  posts: 'post',
  energisers: 'energiser',
  lead_outs: 'leadOut',
  earth_fields: 'earthField',
  services: 'service',
  readings: 'reading',
};

const unsaid: ReadonlySet<string> = new Set(['id', 'name']);

function linesOf({ columns }: Table, cells: Table['rows'][number]['cells']): string {
  return columns
    .flatMap(({ name }, i) => {
      const cell = cells[i] ?? '';
      return unsaid.has(name) || cell === '' ? [] : [`${name.replaceAll('_', ' ')}: ${cell}`];
    })
    .join('\n');
}
