import Database from 'better-sqlite3';
import type { Layer } from '../../core/exchange/geopackage/layers.ts';

/** "GPKG", and version 1.3 (OGC 12-128r17, 1.1.1.1.1). */
const applicationId = 0x47504b47;
const version = 10300;

/** The tables that every GeoPackage has (OGC 12-128r17, annex C), and the reference systems that it must know. */
const ownTables = `
CREATE TABLE gpkg_spatial_ref_sys (
  srs_name TEXT NOT NULL,
  srs_id INTEGER NOT NULL PRIMARY KEY,
  organization TEXT NOT NULL,
  organization_coordsys_id INTEGER NOT NULL,
  definition TEXT NOT NULL,
  description TEXT
);
CREATE TABLE gpkg_contents (
  table_name TEXT NOT NULL PRIMARY KEY,
  data_type TEXT NOT NULL,
  identifier TEXT UNIQUE,
  description TEXT DEFAULT '',
  last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
  min_x DOUBLE,
  min_y DOUBLE,
  max_x DOUBLE,
  max_y DOUBLE,
  srs_id INTEGER,
  CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id)
);
CREATE TABLE gpkg_geometry_columns (
  table_name TEXT NOT NULL,
  column_name TEXT NOT NULL,
  geometry_type_name TEXT NOT NULL,
  srs_id INTEGER NOT NULL,
  z TINYINT NOT NULL,
  m TINYINT NOT NULL,
  CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
  CONSTRAINT uk_gc_table_name UNIQUE (table_name),
  CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
  CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id)
);
`;

const wgs84 =
  'GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563,AUTHORITY["EPSG","7030"]],AUTHORITY["EPSG","6326"]],PRIMEM["Greenwich",0,AUTHORITY["EPSG","8901"]],UNIT["degree",0.0174532925199433,AUTHORITY["EPSG","9122"]],AUTHORITY["EPSG","4326"]]';

const systems: readonly (readonly [string, number, string, number, string, string])[] = [
  ['WGS 84', 4326, 'EPSG', 4326, wgs84, 'Longitude and latitude in degrees'],
  ['Undefined Cartesian SRS', -1, 'NONE', -1, 'undefined', 'Undefined Cartesian coordinates'],
  ['Undefined geographic SRS', 0, 'NONE', 0, 'undefined', 'Undefined geographic coordinates'],
];

const sqlTypes = { text: 'TEXT', number: 'REAL', whole: 'INTEGER' } as const;

/** The bytes of a GeoPackage with these layers. `changedAt`: ISO 8601, with milliseconds and Z. */
export function writeGeoPackage(layers: readonly Layer[], changedAt: string): Uint8Array {
  const database = new Database(':memory:');
  try {
    database.pragma(`application_id = ${applicationId}`);
    database.pragma(`user_version = ${version}`);
    database.exec(ownTables);
    const addSystem = database.prepare('INSERT INTO gpkg_spatial_ref_sys VALUES (?, ?, ?, ?, ?, ?)');
    for (const system of systems) addSystem.run(...system);
    database.transaction(() => {
      for (const layer of layers) addLayer(database, layer, changedAt);
    })();
    return new Uint8Array(database.serialize());
  } finally {
    database.close();
  }
}

function addLayer(database: Database.Database, layer: Layer, changedAt: string): void {
  const { name, title, geometryType, columns, rows, envelope } = layer;
  const [west, east, south, north] = envelope ?? [null, null, null, null];
  const columnSql = columns.map(({ name: column, type }) => `${quoted(column)} ${sqlTypes[type]}`);
  const shape = geometryType ? [`geom ${geometryType}`] : [];
  database.exec(
    `CREATE TABLE ${quoted(name)} (fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, ${[...shape, ...columnSql].join(', ')})`,
  );
  database
    .prepare('INSERT INTO gpkg_contents VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)')
    .run(name, geometryType ? 'features' : 'attributes', name, title, changedAt, west, south, east, north, 4326);
  if (geometryType) {
    database
      .prepare('INSERT INTO gpkg_geometry_columns VALUES (?, ?, ?, ?, 0, 0)')
      .run(name, 'geom', geometryType, 4326);
  }
  const width = columns.length + (geometryType ? 1 : 0);
  const insert = database.prepare(`INSERT INTO ${quoted(name)} VALUES (NULL${', ?'.repeat(width)})`);
  for (const { geometry, cells } of rows) insert.run(...(geometryType ? [geometry] : []), ...cells);
}

function quoted(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}
