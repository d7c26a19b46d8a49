import { spawnSync } from 'node:child_process';
import { symlinkSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';

const endless = 'WITH RECURSIVE c(x) AS (SELECT 1 UNION ALL SELECT x + 1 FROM c)';
const metadata = `CREATE TABLE metadata (name text, value text); INSERT INTO metadata VALUES ('format', 'png'), ('bounds', '1,1,2,2');`;
const tiles = `CREATE TABLE tiles (zoom_level integer, tile_column integer, tile_row integer, tile_data blob);
  INSERT INTO tiles VALUES (2, 1, 1, x'89504e47');`;
const crowd = `CREATE TABLE crowd (n integer);
  INSERT INTO crowd WITH RECURSIVE c(x) AS (SELECT 1 UNION ALL SELECT x + 1 FROM c LIMIT 20000) SELECT x FROM c;`;

/** By what they do: the SQL of tile files whose maker means harm. None answers when it is looked into. */
const silent: Readonly<Record<string, string>> = {
  'endless tiles': `${metadata} CREATE VIEW tiles AS ${endless}
    SELECT x % 5 AS zoom_level, x AS tile_column, x AS tile_row, x'89504e47' AS tile_data FROM c;`,
  'endless metadata': `${tiles} CREATE VIEW metadata AS ${endless} SELECT 'note' || x AS name, 'a' AS value FROM c;`,
  'a threefold cross join': `${metadata} ${crowd} CREATE VIEW tiles AS
    SELECT a.n % 5 AS zoom_level, b.n AS tile_column, d.n AS tile_row, x'89504e47' AS tile_data
    FROM crowd a, crowd b, crowd d;`,
};

/** Writes all of them in the folder. Answers their paths by what they do. */
export function makeSilentFiles(folder: string): Record<string, string> {
  return Object.fromEntries(Object.entries(silent).map(([what, sql]) => [what, makeSqlFile(folder, what, sql)]));
}

export function makeSqlFile(folder: string, name: string, sql: string): string {
  const path = join(folder, `${name}.mbtiles`);
  const database = new Sqlite(path);
  database.exec(sql);
  database.close();
  return path;
}

/** A file that is well until one tile of it is asked for: (2, 3, 3) never comes. */
export function makeTrapFile(folder: string): string {
  return makeSqlFile(
    folder,
    'Trap',
    `${metadata} CREATE TABLE real_tiles AS SELECT 2 AS zoom_level, 1 AS tile_column, 1 AS tile_row, x'89504e47' AS tile_data;
     INSERT INTO real_tiles VALUES (2, 3, 0, x'89504e47');
     CREATE VIEW tiles AS SELECT zoom_level, tile_column, tile_row,
       iif(tile_column = 3, (${endless} SELECT max(x) FROM c), tile_data) AS tile_data FROM real_tiles;`,
  );
}

/** A file that wants all the memory there is. */
export function makeGreedyFile(folder: string): string {
  return makeSqlFile(
    folder,
    'Greedy',
    `${metadata} CREATE VIEW tiles AS
      WITH RECURSIVE c(x, y) AS (SELECT 1, zeroblob(4000000) UNION SELECT x + 1, zeroblob(4000000) FROM c)
      SELECT x % 5 AS zoom_level, x AS tile_column, x AS tile_row, y AS tile_data FROM c;`,
  );
}

/** A pipe that nobody writes into: whoever opens it waits for ever. Answers whether the system made it. */
export function makePipe(path: string): boolean {
  return spawnSync('mkfifo', [path]).status === 0;
}

/** A device without end under the name of a tile file. */
export function linkToDevice(folder: string): string {
  const path = join(folder, 'Device.mbtiles');
  symlinkSync('/dev/zero', path);
  return path;
}
