import { readAngles } from '../../coordinates/degrees.ts';
import { projectionOf } from '../../coordinates/projection.ts';
import { type CsvRow, type CsvTable, readCsv, readFigure } from '../csv/readCsv.ts';
import { previewOf } from '../preview/previewOf.ts';
import type { RawObject } from '../preview/raw.ts';
import { refuse } from '../preview/refuse.ts';
import type { FeatureProblem, GridSystem, ReadOptions, ReadResult } from '../preview/types.ts';
import { columnsOf, type PointColumns } from './columnsOf.ts';

/**
 * Reads a table of points: a heading row that names longitude and latitude (or easting and northing, in the system that
 * the property's coordinates are shown in), and a row for each point. All other columns help to tell what it is.
 */
export function readPoints(text: string, options: ReadOptions = {}): ReadResult {
  const read = readCsv(text);
  if (!read.ok) return read;
  const table = read.value;
  const columns = columnsOf(table.columns, looksDegrees(table));
  if (!columns) {
    const found = table.columns
      .filter((column) => column !== '')
      .slice(0, 12)
      .join(', ')
      .slice(0, 200);
    return refuse(
      `The table has no columns of places. Its columns are: ${found || 'none'}.`,
      'Name two of them lon and lat, or easting and northing, in its first row.',
    );
  }
  const place = columns.as === 'degrees' ? degreesIn : gridIn(options.grid ?? null);
  if (typeof place === 'string') {
    return refuse(place, 'Choose that system under Coordinates first, or give the places as lon and lat.');
  }
  const features: unknown[] = [];
  const problems: FeatureProblem[] = [];
  for (const row of table.rows) {
    const properties = propertiesOf(table, row, columns);
    const position = place(table, row, columns);
    if (typeof position === 'string') {
      const name = typeof properties.name === 'string' && properties.name !== '' ? properties.name : `Row ${row.line}`;
      problems.push({ index: features.length, name, why: position, whatToDo: `Fix row ${row.line} of the table.` });
      features.push({ type: 'Feature', properties, geometry: { type: 'GeometryCollection', geometries: [] } });
      continue;
    }
    const heightM = columns.heightM < 0 ? null : readFigure(row.cells[columns.heightM] ?? '', table.decimalComma);
    const coordinates = heightM === null ? position : [...position, heightM];
    features.push({ type: 'Feature', properties, geometry: { type: 'Point', coordinates } });
  }
  const named = ({ x, y }: PointColumns) => `“${table.columns[x]}” and “${table.columns[y]}”`;
  const notes = columns.unsaid
    ? [`The figures of ${named(columns)} are as small as degrees: they were read as longitude and latitude.`]
    : columns.as === 'grid'
      ? [`Eastings and northings were read as ${options.grid!.name}.`]
      : [];
  return previewOf({ noun: 'Row', features, problems, notes }, options);
}

type Placed = (table: CsvTable, row: CsvRow, columns: PointColumns) => readonly [number, number] | string;

/** Whether two columns that are not called so hold degrees: every figure of the first rows would be a place. */
function looksDegrees({ rows, decimalComma }: CsvTable): (x: number, y: number) => boolean {
  return (x, y) => {
    const places = rows
      .slice(0, 100)
      .map(({ cells }) => [x, y].map((column) => readFigure(cells[column] ?? '', decimalComma)))
      .filter((figures) => figures.every((figure) => figure !== null));
    return places.length > 0 && places.every((figures) => figures.every((figure) => Math.abs(figure!) <= 180));
  };
}

const degreesIn: Placed = (_, { cells }, { x, y }) => {
  const [lonText, latText] = [cells[x]?.trim() ?? '', cells[y]?.trim() ?? ''];
  if (lonText === '' || latText === '') return `its ${lonText === '' ? 'longitude' : 'latitude'} is empty`;
  // No degrees have thousands, so a comma is the decimal sign in any table.
  const [lon, lat] = [readFigure(lonText, true)!, readFigure(latText, true)!];
  if (Number.isFinite(lon) && Number.isFinite(lat)) return [lon, lat];
  const read = readAngles(`${latText}; ${lonText}`);
  if ('problem' in read) return `its place can’t be read (“${latText.slice(0, 30)}”, “${lonText.slice(0, 30)}”)`;
  return [read.angles[1].degrees, read.angles[0].degrees];
};

function gridIn(grid: GridSystem | null): Placed | string {
  const unknown = 'The table gives eastings and northings, and nothing says of which coordinate system.';
  if (!grid) return unknown;
  const { projection } = projectionOf(grid.definition);
  if (!projection) return unknown;
  return ({ decimalComma }, { cells }, { x, y }) => {
    const [east, north] = [x, y].map((column) => readFigure(cells[column] ?? '', decimalComma));
    if (east === null || north === null) return `its ${east === null ? 'easting' : 'northing'} is empty`;
    const [lon, lat] = projection.toLonLat([east!, north!]);
    if (!Number.isFinite(lon) || !Number.isFinite(lat)) return 'its easting and northing give no place';
    return [lon, lat];
  };
}

function propertiesOf({ columns }: CsvTable, { cells }: CsvRow, { x, y }: PointColumns): RawObject {
  return Object.fromEntries(columns.flatMap((column, i) => (i === x || i === y ? [] : [[column, cells[i] ?? '']])));
}
