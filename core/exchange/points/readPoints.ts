import { readAngles } from '../../coordinates/degrees.ts';
import { projectionOf } from '../../coordinates/projection.ts';
import { plainWords } from '../../words/figures.ts';
import { type Message, message } from '../../words/message.ts';
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
      .map((column) => column.slice(0, 40));
    return refuse(message('exchange.file.noPlaces', { columns: found }), message('exchange.remedy.nameColumns'));
  }
  const place = columns.as === 'degrees' ? degreesIn : gridIn(options.grid ?? null);
  if (!place) return refuse(message('exchange.file.unknownGrid'), message('exchange.remedy.selectSystem'));
  const features: unknown[] = [];
  const problems: FeatureProblem[] = [];
  for (const row of table.rows) {
    const properties = propertiesOf(table, row, columns);
    const position = place(table, row, columns);
    if ('code' in position) {
      const isNamed = typeof properties.name === 'string' && properties.name !== '';
      const name = isNamed ? String(properties.name) : plainWords().exchange.unnamed.row({ number: row.line });
      const whatToDo = message('exchange.remedy.fixRow', { row: row.line });
      problems.push({ index: features.length, name, why: position, whatToDo });
      features.push({ type: 'Feature', properties, geometry: { type: 'GeometryCollection', geometries: [] } });
      continue;
    }
    const heightM = columns.heightM < 0 ? null : readFigure(row.cells[columns.heightM] ?? '', table.decimalComma);
    const coordinates = heightM === null ? position : [...position, heightM];
    features.push({ type: 'Feature', properties, geometry: { type: 'Point', coordinates } });
  }
  return previewOf({ noun: 'row', features, problems, notes: notesOn(table, columns, options.grid ?? null) }, options);
}

function notesOn({ columns: names }: CsvTable, { unsaid, as, x, y }: PointColumns, grid: GridSystem | null): Message[] {
  if (unsaid) return [message('exchange.note.smallAsDegrees', { first: names[x]!, second: names[y]! })];
  return as === 'grid' ? [message('exchange.note.grid', { system: grid!.name })] : [];
}

type Placed = (table: CsvTable, row: CsvRow, columns: PointColumns) => readonly [number, number] | Message;

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
  if (lonText === '' || latText === '') return empty(lonText === '' ? 'longitude' : 'latitude');
  // No degrees have thousands, so a comma is the decimal sign in any table.
  const [lon, lat] = [readFigure(lonText, true)!, readFigure(latText, true)!];
  if (Number.isFinite(lon) && Number.isFinite(lat)) return [lon, lat];
  const read = readAngles(`${latText}; ${lonText}`);
  if ('problem' in read) {
    return message('exchange.piece.unreadablePlace', { lat: latText.slice(0, 30), lon: lonText.slice(0, 30) });
  }
  return [read.angles[1].degrees, read.angles[0].degrees];
};

function empty(figure: 'longitude' | 'latitude' | 'easting' | 'northing'): Message {
  return message('exchange.piece.emptyPlace', { figure });
}

/** Null where nothing says which system the figures are in. */
function gridIn(grid: GridSystem | null): Placed | null {
  if (!grid) return null;
  const { projection } = projectionOf(grid.definition);
  if (!projection) return null;
  return ({ decimalComma }, { cells }, { x, y }) => {
    const [east, north] = [x, y].map((column) => readFigure(cells[column] ?? '', decimalComma));
    if (east === null || north === null) return empty(east === null ? 'easting' : 'northing');
    const [lon, lat] = projection.toLonLat([east!, north!]);
    if (!Number.isFinite(lon) || !Number.isFinite(lat)) return message('exchange.piece.gridNowhere');
    return [lon, lat];
  };
}

function propertiesOf({ columns }: CsvTable, { cells }: CsvRow, { x, y }: PointColumns): RawObject {
  return Object.fromEntries(columns.flatMap((column, i) => (i === x || i === y ? [] : [[column, cells[i] ?? '']])));
}
