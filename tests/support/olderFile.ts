import Sqlite from 'better-sqlite3';
import { registersOf } from '../../electron/host/registers.ts';
import { BlobTable } from '../../electron/store/blobTable.ts';
import { History } from '../../electron/store/history.ts';
import { readMigrations } from '../../electron/store/migrations.ts';
import { createProjectFile } from '../../electron/store/projectFile.ts';
import { RegisterTable } from '../../electron/store/registerTable.ts';
import { ThingTable } from '../../electron/store/thingTable.ts';
import { fullProperty, photoBlobs, stagedPicture, underlay } from './fullProperty.ts';
import { changed, made, post } from './projectFile.ts';

/** From these versions on a file has a table for photos, and one for pictures under the drawing. */
const since = { photos: 3, pictures: 5 };

/**
 * A file as the app of an earlier version left it: its schema by the migrations up to then, its rows by the tables of the
 * store. With two steps of undo and one of redo, and as many pictures as it can hold.
 */
export function makeOlderFile(path: string, version: number): string {
  createProjectFile(path, fullProperty(), `Undergate of version ${version}`, readMigrations().slice(0, version));
  const database = new Sqlite(path);
  const things = new ThingTable(database);
  const history = new History(database);
  const put = database.prepare('UPDATE fact SET value = ? WHERE name = ?');
  const steps = [
    { label: 'Place a post', changes: [made(post('older'))] },
    { label: 'Name it', changes: [changed(post('older'), post('older', 'Corner'))] },
  ];
  database.transaction(() => {
    steps.forEach(({ label, changes }, index) => {
      things.write(changes);
      history.add(index, { label, changes });
    });
    history.add(steps.length, { label: 'Place another', changes: [made(post('undone'))] });
    put.run(steps.length, 'position');
    put.run(steps.length + 2, 'revision');
    if (version >= since.photos) new BlobTable(database).add(photoBlobs);
    if (version >= since.pictures) things.write([made(underlay)]);
    things.load();
    new RegisterTable(database).replace(registersOf(things.things(path)));
    put.run(steps.length + 2, 'registersAt');
  })();
  if (version >= since.pictures) {
    const staging = stagedPicture(path);
    staging.beside(database, () => database.transaction(() => staging.copyInto(database))());
    staging.discard();
  }
  database.close();
  return path;
}
