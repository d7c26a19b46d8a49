import type { Database, Statement } from 'better-sqlite3';
import type { NewPhotoBytes } from '../../core/api/photoApi.ts';
import type { PictureTileKey } from '../../core/api/pictureApi.ts';
import type { Edit, FileState, Replay } from '../../core/api/projectApi.ts';
import { inverse } from '../../core/model/difference.ts';
import type { Thing } from '../../core/model/things.ts';
import { BlobTable } from './blobTable.ts';
import { fileIdentity } from './fileIdentity.ts';
import { History } from './history.ts';
import type { ImageStaging } from './imageStaging.ts';
import { ImageTable } from './imageTable.ts';
import { copyInto } from './openDatabase.ts';
import { damaged, moved, ProblemError } from './problems.ts';
import { publishFile } from './publishFile.ts';
import { type Registers, RegisterTable } from './registerTable.ts';
import { outOfDate, ThingTable } from './thingTable.ts';

type FactName = 'revision' | 'position' | 'registersAt';

/**
 * One open project file. Every method that writes is one transaction, on the disk when it returns; on any error
 * nothing of it is. Methods throw a `ProblemError` or SQLite's own error: see `problemOf`.
 */
export class ProjectStore {
  readonly path: string;
  readonly #identity: string | null;
  readonly #database: Database;
  readonly #things: ThingTable;
  readonly #history: History;
  readonly #registers: RegisterTable;
  readonly #images: ImageTable;
  readonly #blobs: BlobTable;
  readonly #fact: Statement<[FactName], number>;
  readonly #setFact: Statement<[number, FactName]>;
  /** The merge key of the edit just before, where the next one may join it. */
  #openMergeKey: string | undefined;

  constructor(path: string, database: Database) {
    this.path = path;
    this.#identity = fileIdentity(path);
    this.#database = database;
    this.#things = new ThingTable(database);
    this.#history = new History(database);
    this.#registers = new RegisterTable(database);
    this.#images = new ImageTable(database);
    this.#blobs = new BlobTable(database);
    this.#fact = database.prepare<[FactName], number>('SELECT value FROM fact WHERE name = ?').pluck();
    this.#setFact = database.prepare('UPDATE fact SET value = ? WHERE name = ?');
  }

  /** Whether the path leads to this very file, whatever it is called there. */
  isAt(path: string): boolean {
    return this.#identity !== null && fileIdentity(path) === this.#identity;
  }

  things(): Thing[] {
    return this.#things.read(this.path);
  }

  state(): FileState {
    const position = this.#numberOf('position');
    return {
      revision: this.#numberOf('revision'),
      undo: this.#history.undoLabel(position),
      redo: this.#history.redoLabel(position),
    };
  }

  /** Writes the edit and makes it one step of undo. An edit without changes writes nothing. */
  apply(edit: Edit): FileState {
    const revision = this.#numberOf('revision');
    if (edit.baseRevision !== revision) {
      throw outOfDate(`it stands at revision ${revision}, the edit was made on ${edit.baseRevision}`);
    }
    if (edit.changes.length === 0) return this.state();
    assertPropertyStays(edit);
    const joins = edit.mergeKey !== undefined && edit.mergeKey === this.#openMergeKey;
    this.#changeFile(() => {
      this.#things.write(edit.changes);
      const position = this.#numberOf('position');
      return joins ? this.#history.merge(position, edit) : this.#history.add(position, edit);
    });
    this.#openMergeKey = edit.mergeKey;
    return this.state();
  }

  /** Takes a picture in and makes the edit that shows it: both or neither. */
  applyWithImage(edit: Edit, staging: ImageStaging): FileState {
    return staging.takeInto(this.#database, () => this.apply(edit));
  }

  /** Takes photos in and makes the edit that names them: all of it or nothing. */
  applyWithPhotos(edit: Edit, photos: readonly NewPhotoBytes[]): FileState {
    return this.#database
      .transaction(() => {
        this.#blobs.add(photos);
        return this.apply(edit);
      })
      .immediate();
  }

  /** The bytes of a photo or of its small copy; null where there is none of that id. */
  photoBytes(blobId: string): Uint8Array | null {
    return this.#blobs.bytes(blobId);
  }

  /** A tile of a picture under the drawing; null where there is none. */
  imageTile(key: PictureTileKey): Uint8Array | null {
    return this.#images.tile(key);
  }

  /** Takes back the newest step; null where there is none. */
  undo(): Replay | null {
    const found = this.#history.stepToUndo(this.#numberOf('position'));
    return found && this.#replay({ ...found.step, changes: inverse(found.step.changes) }, found.position);
  }

  /** Brings the step again that was taken back last; null where there is none. */
  redo(): Replay | null {
    const found = this.#history.stepToRedo(this.#numberOf('position'));
    return found && this.#replay(found.step, found.position);
  }

  /** Brings what the file keeps for readers without the app up to date: `compute` is asked only where it is not. */
  refreshRegisters(compute: (things: readonly Thing[]) => Registers): void {
    const revision = this.#numberOf('revision');
    if (this.#numberOf('registersAt') === revision) return;
    const registers = compute(this.things());
    this.#write(() => {
      this.#registers.replace(registers);
      this.#setFact.run(revision, 'registersAt');
    });
  }

  /** Writes a whole copy, with its history, to another path. */
  copyTo(path: string, replace: boolean): void {
    publishFile(path, replace, (draftPath) => copyInto(this.#database, draftPath));
  }

  close(): void {
    this.#database.close();
  }

  #replay(step: Omit<Replay, 'state'>, position: number): Replay {
    this.#openMergeKey = undefined;
    this.#changeFile(() => {
      this.#things.write(step.changes);
      return position;
    });
    return { label: step.label, changes: step.changes, state: this.state() };
  }

  /** Makes one change of the file, which answers the new position in the history. */
  #changeFile(change: () => number): void {
    this.#write(() => {
      this.#setFact.run(change(), 'position');
      this.#setFact.run(this.#numberOf('revision') + 1, 'revision');
    });
  }

  /**
   * Writes in one transaction. Not into a file that was moved or deleted meanwhile: what it took would be lost with it, and
   * its journal would lie beside another name.
   */
  #write(work: () => void): void {
    if (!this.isAt(this.path)) throw moved(this.path);
    this.#database.transaction(work).immediate();
  }

  #numberOf(name: FactName): number {
    const value = this.#fact.get(name);
    if (Number.isSafeInteger(value)) return value as number;
    throw damaged(`${this.path} no longer says its ${name}.`);
  }
}

function assertPropertyStays(edit: Edit): void {
  if (edit.changes.some(({ kind, after }) => kind === 'property' && after === null)) {
    throw new ProblemError(
      'not-valid',
      'The record of the property itself can only be changed, not taken away.',
      'Make a new file instead.',
    );
  }
}
