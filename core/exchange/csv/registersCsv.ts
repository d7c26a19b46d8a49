import type { Position } from 'geojson';
import { type Project, propertyOf } from '../../model/project.ts';
import type { Survey } from '../../survey/types.ts';
import { allTables } from '../tables/allTables.ts';
import type { Row, Table } from '../tables/table.ts';
import { writeZip } from '../zip/writeZip.ts';
import { type Cell, writeCsv } from './writeCsv.ts';

/** Every register as a table of its own, packed into one file; `placed`: points carry longitude and latitude. */
export function writeRegisters(project: Project, survey: Survey): Uint8Array {
  const { placed } = propertyOf(project);
  const tables = allTables(project, survey).filter(({ rows }) => rows.length > 0);
  return writeZip(tables.map((table) => ({ name: `${table.name}.csv`, text: writeTable(table, placed) })));
}

function writeTable({ columns, rows }: Table, placed: boolean): string {
  const withPlaces = placed && rows.some(({ geometry }) => geometry?.type === 'Point');
  const names = columns.map(({ name }) => name);
  if (!withPlaces)
    return writeCsv(
      names,
      rows.map(({ cells }) => cells),
    );
  return writeCsv(
    [...names, 'lon', 'lat'],
    rows.map((row): Cell[] => [...row.cells, ...placeOf(row)]),
  );
}

function placeOf({ geometry }: Row): readonly Cell[] {
  const [lon = null, lat = null]: readonly (number | null)[] =
    geometry?.type === 'Point' ? (geometry.coordinates satisfies Position) : [];
  return [lon, lat];
}
