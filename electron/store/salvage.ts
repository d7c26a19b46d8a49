import { closeSync, openSync, readSync } from 'node:fs';
import Sqlite, { type Database } from 'better-sqlite3';
import { unknownFields } from '../../core/api/unknownFields.ts';
import type { Thing } from '../../core/model/things.ts';
import { plainWords } from '../../core/words/figures.ts';
import { isBlob } from './blobTable.ts';
import { readHeader } from './fileHeader.ts';
import { newestVersion, readMigrations } from './migrations.ts';
import { isWithinMeasure, schemaDifference } from './schemaCheck.ts';
import { isThing, type StoredThing } from './thingTable.ts';
import { idsIn } from './unused.ts';

/** What lay in a file alone, and so could not be had any more when somebody else had written into it. */
export interface Lost {
  readonly photos: number;
  /** Names of the maps and pictures under the drawing. */
  readonly pictures: readonly string[];
}

/**
 * Puts the photos and pictures that `things` name into a new file, as far as they are to be had from whatever lies at
 * `path` now: mostly an older or a newer copy of the same property. A photo is named by the hash of its bytes and is only
 * taken where it fits; a picture under the drawing by an id that is never given twice, and its tiles are never changed. What
 * stands in a field or a thing that only a newer version knows may name either.
 */
export function salvageInto(draft: Database, path: string, stored: readonly StoredThing[]): Lost {
  const laid = openLaid(path);
  const things = stored.filter(isThing);
  const others = new Set(stored.filter((thing) => !isThing(thing) || unknownFields(thing).length > 0).flatMap(idsOf));
  try {
    return {
      photos: salvagePhotos(draft, laid, things, others),
      pictures: salvagePictures(draft, laid, things, others),
    };
  } finally {
    laid?.close();
  }
}

/** What could not be saved, as a sentence; null where everything was. */
export function lostInWords({ photos, pictures }: Lost): string | null {
  return photos + pictures.length > 0 ? plainWords().host.files.lost({ photos, maps: pictures }) : null;
}

/** The file opened for reading alone, where it is one of ours and whole; else null. Never writes into it or beside it. */
function openLaid(path: string): Database | null {
  let laid: Database | undefined;
  try {
    const { isProject, version, isWriteAhead } = readHeader(path);
    const migrations = readMigrations();
    if (!isProject || isWriteAhead || version > newestVersion(migrations) || !isBounded(path)) return null;
    laid = new Sqlite(path, { readonly: true, fileMustExist: true, timeout: 0 });
    laid.pragma('trusted_schema = OFF');
    if (!schemaDifference(laid, migrations) && laid.pragma('quick_check(1)', { simple: true }) === 'ok') return laid;
  } catch {
    // Whatever it is, nothing can be had from it.
  }
  laid?.close();
  return null;
}

function isBounded(path: string): boolean {
  const file = openSync(path, 'r');
  try {
    return isWithinMeasure((at, length) => {
      const bytes = Buffer.alloc(length);
      return bytes.subarray(0, readSync(file, bytes, 0, length, at));
    });
  } finally {
    closeSync(file);
  }
}

function idsOf(thing: StoredThing): string[] {
  return [...idsIn(JSON.stringify(thing))];
}

/** Answers how many photos were not to be had. */
function salvagePhotos(
  draft: Database,
  laid: Database | null,
  things: readonly Thing[],
  others: ReadonlySet<string>,
): number {
  const photos = things
    .flatMap((thing): readonly Thing[] => (thing.kind === 'handover' ? thing.things : [thing]))
    .filter((thing) => thing.kind === 'photo');
  const thumbOf = new Map(photos.map(({ blobId, thumbId }) => [blobId, thumbId]));
  if (!laid || !hasTable(laid, 'blob')) return thumbOf.size;
  const find = laid.prepare<[string], { mediaType: string; bytes: Buffer }>(
    'SELECT media_type AS mediaType, bytes FROM blob WHERE id = ?',
  );
  const add = draft.prepare('INSERT INTO blob (id, media_type, bytes) VALUES (?, ?, ?) ON CONFLICT DO NOTHING');
  const take = (id: string) => {
    const found = find.get(id);
    if (!found || !isBlob(id, found.bytes)) return false;
    add.run(id, found.mediaType, found.bytes);
    return true;
  };
  let lost = 0;
  for (const [blobId, thumbId] of thumbOf) {
    if (!take(blobId)) lost += 1;
    take(thumbId);
  }
  for (const id of others) take(id);
  return lost;
}

/** Answers the names of the pictures that were not to be had. */
function salvagePictures(
  draft: Database,
  laid: Database | null,
  things: readonly Thing[],
  others: ReadonlySet<string>,
): string[] {
  const named = things.flatMap((thing) =>
    thing.kind === 'underlay' && thing.source.from === 'picture'
      ? [{ name: thing.name, imageId: thing.source.imageId }]
      : [],
  );
  if (!laid || !hasTable(laid, 'image')) return named.map(({ name }) => name);
  const image = laid.prepare<[string], unknown[]>('SELECT * FROM image WHERE id = ?').raw();
  const tiles = laid.prepare<[string], unknown[]>('SELECT * FROM image_tile WHERE image_id = ?').raw();
  const addImage = draft.prepare('INSERT INTO image VALUES (?, ?, ?, ?, ?)');
  const addTile = draft.prepare('INSERT INTO image_tile VALUES (?, ?, ?, ?, ?)');
  const taken = new Set<string>();
  for (const imageId of [...named.map((each) => each.imageId), ...others]) {
    const found = taken.has(imageId) ? undefined : image.get(imageId);
    if (!found) continue;
    addImage.run(...found);
    for (const tile of tiles.iterate(imageId)) addTile.run(...tile);
    taken.add(imageId);
  }
  return named.filter(({ imageId }) => !taken.has(imageId)).map(({ name }) => name);
}

function hasTable(database: Database, name: string): boolean {
  return database.prepare(`SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = ?`).get(name) !== undefined;
}
