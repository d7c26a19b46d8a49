import type { Geometry } from 'geojson';
import { EditRefused } from '../../model/edits/support/edit.ts';
import type { Project } from '../../model/project.ts';
import type { Survey } from '../../survey/types.ts';
import type { Cell } from '../csv/writeCsv.ts';
import { whyNotOnEarth } from '../outgoing/whyNotOnEarth.ts';
import { allTables } from '../tables/allTables.ts';
import type { Column, Table } from '../tables/table.ts';
import { envelopeOf, geometryBlob } from './geometryBlob.ts';

/** A table of a GeoPackage: all its shapes are of one sort. */
export interface Layer {
  readonly name: string;
  readonly title: string;
  /** As `gpkg_geometry_columns` names it; null: a table without shapes. */
  readonly geometryType: 'POINT' | 'MULTILINESTRING' | 'MULTIPOLYGON' | null;
  readonly columns: readonly Column[];
  readonly rows: readonly LayerRow[];
  /** West, east, south, north of all of it; null without shapes. */
  readonly envelope: readonly [number, number, number, number] | null;
}

export interface LayerRow {
  readonly geometry: Uint8Array | null;
  readonly cells: readonly Cell[];
}

/**
 * Every register as layers of a GeoPackage; a register whose rows are points, lines and areas becomes one layer of each.
 * Throws `EditRefused` for a drawing without a place on earth.
 */
export function geoPackageLayers(project: Project, survey: Survey): Layer[] {
  const refusal = whyNotOnEarth(project, 'GeoPackage');
  if (refusal) throw new EditRefused(refusal);
  return allTables(project, survey).flatMap(layersOf);
}

type Sort = 'points' | 'lines' | 'areas' | 'none';

const geometryTypes = { points: 'POINT', lines: 'MULTILINESTRING', areas: 'MULTIPOLYGON', none: null } as const;

function layersOf({ name, title, columns, rows }: Table): Layer[] {
  const sorts = [...Map.groupBy(rows, ({ geometry }) => sortOf(geometry))];
  // Rows without a place join those that have one, where all of those are of a sort.
  const shaped = sorts.filter(([sort]) => sort !== 'none');
  if (shaped.length === 1) return [layer(name, title, shaped[0]![0], columns, rows)];
  return sorts.map(([sort, some]) => {
    const suffix = sorts.length === 1 ? '' : sort === 'none' ? '_without_place' : `_${sort}`;
    return layer(`${name}${suffix}`, title, sort, columns, some);
  });
}

function sortOf(geometry: Geometry | null): Sort {
  switch (geometry?.type) {
    case 'Point':
      return 'points';
    case 'LineString':
    case 'MultiLineString':
      return 'lines';
    case 'Polygon':
    case 'MultiPolygon':
      return 'areas';
    default:
      return 'none';
  }
}

function layer(name: string, title: string, sort: Sort, columns: readonly Column[], rows: Table['rows']): Layer {
  const shapes = rows.map(({ geometry }) => (geometry && sort !== 'none' ? promoted(geometry) : null));
  const envelopes = shapes.flatMap((shape) => (shape ? [envelopeOf(shape)] : []));
  const most = (index: 0 | 1 | 2 | 3, pick: (...values: number[]) => number) =>
    envelopes.reduce((so, envelope) => pick(so, envelope[index]), envelopes[0]?.[index] ?? 0);
  return {
    name,
    title,
    geometryType: geometryTypes[sort],
    columns,
    rows: rows.map(({ cells }, i) => ({ cells, geometry: shapes[i] ? geometryBlob(shapes[i]) : null })),
    envelope:
      envelopes.length === 0 ? null : [most(0, Math.min), most(1, Math.max), most(2, Math.min), most(3, Math.max)],
  };
}

type Shape = Parameters<typeof geometryBlob>[0];

/** Single lines and areas as sets of one, so that a layer is all of a sort. */
function promoted(geometry: Geometry): Shape | null {
  if (geometry.type === 'LineString') return { type: 'MultiLineString', coordinates: [geometry.coordinates] };
  if (geometry.type === 'Polygon') return { type: 'MultiPolygon', coordinates: [geometry.coordinates] };
  return geometry.type === 'GeometryCollection' ? null : geometry;
}
