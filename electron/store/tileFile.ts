import { statSync } from 'node:fs';
import Sqlite, { type Database, type Statement } from 'better-sqlite3';
import type { TileFileFacts } from '../../core/api/pictureApi.ts';
import { lonLatInTile, rowFromSouth } from '../../core/geometry/picture/webMercator.ts';
import { type Message, message } from '../../core/words/message.ts';
import { TileProblem } from './tileProblem.ts';

/** A larger one is no map tile. */
const mostTileBytes = 8 * 1024 * 1024;
const deepestZoom = 30;
const mostFactLetters = 2000;

/**
 * An MBTiles file (specification 1.3) of raster tiles, opened where it is and only read. Tiles are asked for with rows counted
 * from the north; in the file they count from the south. By the specification `tiles` may be a view, and then what the file
 * holds is a program of its maker's: any call here may never return, or want all memory there is. So this runs only in a
 * process that can be ended (`tileReader.ts`).
 */
export class TileFile {
  readonly #path: string;
  readonly #database: Database;
  readonly #tile: Statement<[number, number, number], { size: number; bytes: Buffer | null }>;

  constructor(path: string) {
    this.#path = path;
    this.#database = openReadOnly(path);
    try {
      this.#tile = this.#database.prepare(
        `SELECT octet_length(tile_data) AS size, iif(octet_length(tile_data) <= ${mostTileBytes}, tile_data, NULL) AS bytes
         FROM tiles WHERE zoom_level = ? AND tile_column = ? AND tile_row = ?`,
      );
    } catch (error) {
      this.#database.close();
      throw inWords(error, path);
    }
  }

  facts(): TileFileFacts {
    try {
      return factsOf(this.#database, this.#path);
    } catch (error) {
      throw inWords(error, this.#path);
    }
  }

  tile(zoom: number, column: number, row: number): Uint8Array | null {
    const found = this.#tile.get(zoom, column, rowFromSouth(zoom, row));
    return found?.bytes ? new Uint8Array(found.bytes) : null;
  }

  close(): void {
    this.#database.close();
  }
}

function inWords(error: unknown, path: string): Error {
  return error instanceof TileProblem ? error : notTiles(path, message('host.maps.notTiles.noTables'));
}

/** Pipes and devices are not opened: some never answer, some never end. */
function openReadOnly(path: string): Database {
  if (!statSync(path).isFile()) throw notTiles(path, message('host.maps.notTiles.noFile'));
  const database = new Sqlite(path, { readonly: true, fileMustExist: true, timeout: 1000 });
  try {
    database.pragma('trusted_schema = OFF');
    database.pragma('query_only = ON');
    database.pragma('cell_size_check = ON');
    // What a view piles up must not fill the disk; how much memory it may take is watched.
    database.pragma('temp_store = MEMORY');
    database.prepare('SELECT count(*) FROM sqlite_schema').get();
    return database;
  } catch (error) {
    database.close();
    if (error instanceof Error && 'code' in error && error.code === 'SQLITE_NOTADB') {
      throw notTiles(path, message('host.maps.notTiles.noDatabase'));
    }
    throw error;
  }
}

function factsOf(database: Database, path: string): TileFileFacts {
  const metadata = new Map(
    database
      .prepare<[], { name: string; value: string }>(
        `SELECT CAST(name AS TEXT) AS name, substr(CAST(value AS TEXT), 1, ${mostFactLetters}) AS value FROM metadata
         WHERE name IN ('name', 'format', 'bounds', 'attribution') AND value IS NOT NULL LIMIT 20`,
      )
      .all()
      .map(({ name, value }) => [name, value]),
  );
  // Each by itself, so that an index answers it.
  const zooms = database
    .prepare<[], { least: number | null; most: number | null }>(
      'SELECT (SELECT min(zoom_level) FROM tiles) AS least, (SELECT max(zoom_level) FROM tiles) AS most',
    )
    .get()!;
  if (zooms.least === null || zooms.most === null) throw notTiles(path, message('host.maps.notTiles.noTiles'));
  if (!isZoom(zooms.least) || !isZoom(zooms.most)) throw notTiles(path, message('host.maps.notTiles.zooms'));
  const format = metadata.get('format')?.toLowerCase() ?? formatOf(database);
  if (!['png', 'jpg', 'jpeg', 'webp', 'image/png', 'image/jpeg', 'image/webp'].includes(format ?? '')) {
    const what = message('host.maps.otherTiles.message', { path, format: format?.slice(0, 40) ?? null });
    throw new TileProblem('not-valid', what, message('host.maps.otherTiles.remedy'));
  }
  return {
    path,
    name: metadata.get('name')?.slice(0, 200).trim() || fileNameOf(path),
    fileName: fileNameOf(path),
    minZoom: zooms.least,
    maxZoom: zooms.most,
    bounds: boundsIn(metadata.get('bounds')) ?? boundsOfTiles(database, zooms.most),
    attribution: (metadata.get('attribution') ?? '').replace(/<[^>]*>/g, '').slice(0, 300),
  };
}

function isZoom(zoom: number): boolean {
  return Number.isInteger(zoom) && zoom >= 0 && zoom <= deepestZoom;
}

/** The kind of the first tile there is, where the metadata don't say it; null: not known. */
function formatOf(database: Database): string | null {
  const first = database.prepare<[], Buffer>('SELECT substr(tile_data, 1, 12) FROM tiles LIMIT 1').pluck().get();
  const begins = first?.toString('latin1') ?? '';
  if (begins.startsWith('\x89PNG')) return 'png';
  if (begins.startsWith('\xff\xd8')) return 'jpg';
  return begins.startsWith('RIFF') && begins.endsWith('WEBP') ? 'webp' : null;
}

function boundsIn(text: string | undefined): TileFileFacts['bounds'] | null {
  const numbers = text?.split(',').map(Number) ?? [];
  const [west, south, east, north] = numbers;
  if (numbers.length !== 4 || !numbers.every(Number.isFinite)) return null;
  const sound = west! >= -180 && east! <= 180 && west! < east! && south! >= -90 && north! <= 90 && south! < north!;
  return sound ? [west!, south!, east!, north!] : null;
}

function boundsOfTiles(database: Database, zoom: number): TileFileFacts['bounds'] {
  const { west, east, south, north } = database
    .prepare<[number], { west: number; east: number; south: number; north: number }>(
      `SELECT min(tile_column) AS west, max(tile_column) AS east, min(tile_row) AS south, max(tile_row) AS north
       FROM tiles WHERE zoom_level = ?`,
    )
    .get(zoom)!;
  const [westDeg, northDeg] = lonLatInTile(zoom, west, rowFromSouth(zoom, north), [0, 0]);
  const [eastDeg, southDeg] = lonLatInTile(zoom, east, rowFromSouth(zoom, south), [1, 1]);
  const within = (value: number, most: number) => Math.max(-most, Math.min(most, value));
  return [within(westDeg, 180), within(southDeg, 90), within(eastDeg, 180), within(northDeg, 90)];
}

function fileNameOf(path: string): string {
  return path.split(/[\\/]/).pop() ?? path;
}

function notTiles(path: string, why: Message): TileProblem {
  const what = message('host.maps.notTiles.message', { path, why });
  return new TileProblem('not-valid', what, message('host.maps.notTiles.remedy'));
}
