import Sqlite from 'better-sqlite3';

/** A grey picture of one pixel. */
export const onePixelPng = new Uint8Array(
  Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==', 'base64'),
);

export interface TileFileContent {
  readonly tiles: readonly {
    readonly zoom: number;
    readonly column: number;
    readonly rowFromSouth: number;
    readonly bytes: Uint8Array;
  }[];
  readonly metadata: Readonly<Record<string, string>>;
}

/** Writes an MBTiles file, with the tables of its specification (1.3). Answers its path. */
export function makeTileFile(path: string, { tiles, metadata }: TileFileContent): string {
  const database = new Sqlite(path);
  database.exec(
    `CREATE TABLE metadata (name text, value text);
     CREATE TABLE tiles (zoom_level integer, tile_column integer, tile_row integer, tile_data blob);
     CREATE UNIQUE INDEX tile_index ON tiles (zoom_level, tile_column, tile_row);`,
  );
  const fact = database.prepare('INSERT INTO metadata VALUES (?, ?)');
  for (const [name, value] of Object.entries(metadata)) fact.run(name, value);
  const insert = database.prepare('INSERT INTO tiles VALUES (?, ?, ?, ?)');
  for (const { zoom, column, rowFromSouth, bytes } of tiles) insert.run(zoom, column, rowFromSouth, bytes);
  database.close();
  return path;
}
