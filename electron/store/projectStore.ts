import { existsSync, rmSync } from 'node:fs';
import type { Database, Statement } from 'better-sqlite3';
import type { NewPhotoBytes } from '../../core/api/photoApi.ts';
import type { PictureTileKey } from '../../core/api/pictureApi.ts';
import type { Edit, FileState, Replay } from '../../core/api/projectApi.ts';
import { unknownFields } from '../../core/api/unknownFields.ts';
import { type Change, inverse } from '../../core/model/difference.ts';
import { isKind } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { plainWords } from '../../core/words/figures.ts';
import { message } from '../../core/words/message.ts';
import { BlobTable, dropBlobs, unusedBlobs } from './blobTable.ts';
import type { HeldFile, Trouble } from './heldFile.ts';
import { History, type Step } from './history.ts';
import type { ImageStaging } from './imageStaging.ts';
import { dropImages, ImageTable, unusedImages } from './imageTable.ts';
import { readMigrations } from './migrations.ts';
import { makeDatabase } from './newDatabase.ts';
import { copyInto, restamp } from './openDatabase.ts';
import { damaged, overwritten, ProblemError } from './problems.ts';
import { publishFile } from './publishFile.ts';
import { type Registers, RegisterTable } from './registerTable.ts';
import { type Lost, salvageInto } from './salvage.ts';
import { isThing, outOfDate, type StoredChange, ThingTable, type Written } from './thingTable.ts';

type FactName = 'revision' | 'position' | 'registersAt';

/** Computes what a file keeps for readers without the app. */
export type Compute = (things: readonly Thing[]) => Registers;

/**
 * One open project file. Every method that writes is one transaction, on the disk when it returns; on any error
 * nothing of it is. Methods throw a `ProblemError` or SQLite's own error: see `problemOf`.
 *
 * The things and the state are kept in memory. Where somebody else has written into the file they are all that is left of
 * what was open: they go on being answered, and `copyTo` makes a file of them; whatever else is asked is refused.
 */
export class ProjectStore {
  readonly path: string;
  readonly #file: HeldFile;
  readonly #database: Database;
  readonly #things: ThingTable;
  readonly #history: History;
  readonly #registers: RegisterTable;
  readonly #images: ImageTable;
  readonly #blobs: BlobTable;
  readonly #fact: Statement<[FactName], number>;
  readonly #setFact: Statement<[number, FactName]>;
  readonly #origin: { readonly made: string; readonly madeWith: string };
  #state: FileState;
  /** The merge key of the edit just before, where the next one may join it. */
  #openMergeKey: string | undefined;

  constructor(file: HeldFile) {
    const { path, database } = file;
    this.path = path;
    this.#file = file;
    this.#database = database;
    this.#things = new ThingTable(database);
    file.whenTouched(() => this.#things.isAsKept());
    this.#history = new History(database);
    this.#registers = new RegisterTable(database);
    this.#images = new ImageTable(database);
    this.#blobs = new BlobTable(database);
    this.#fact = database.prepare<[FactName], number>('SELECT value FROM fact WHERE name = ?').pluck();
    this.#setFact = database.prepare('UPDATE fact SET value = ? WHERE name = ?');
    const text = database.prepare<[string], string>(`SELECT CAST(value AS TEXT) FROM fact WHERE name = ?`).pluck();
    this.#origin = { made: text.get('made') ?? '', madeWith: text.get('madeWith') ?? '' };
    this.#state = this.#readState();
  }

  /** Whether the path leads to this very file, whatever it is called there. */
  isAt(path: string): boolean {
    return this.#file.isAt(path);
  }

  /** What others have done to the file while it was open; null: nothing. */
  trouble(): Trouble | null {
    return this.#file.trouble();
  }

  /** Whether no file holds any more what is open here, or none in reach: it was written over, deleted, or is out of reach. */
  isOnlyHere(): boolean {
    return !this.#isReadable() || (orNull(() => this.#file.isDeleted()) ?? true);
  }

  /** Whether the file can't come back: it was written over or deleted, not only moved or out of reach. */
  isGone(): boolean {
    return this.trouble() === 'overwritten' || (orNull(() => this.#file.isDeleted()) ?? false);
  }

  things(): Thing[] {
    return this.#things.things(this.path);
  }

  /** Whether the file, whose things these are, holds more than this version knows: fields of them, or things of other kinds. */
  holdsUnknown(things: readonly Thing[]): boolean {
    return this.#things.holdsNewerKinds() || things.some((thing) => unknownFields(thing).length > 0);
  }

  state(): FileState {
    return this.#state;
  }

  /** Writes the edit and makes it one step of undo. An edit without changes writes nothing. */
  apply(edit: Edit): FileState {
    return this.#apply(edit, () => {});
  }

  /** Takes a picture in and makes the edit that shows it: both or neither. */
  applyWithImage(edit: Edit, staging: ImageStaging): FileState {
    this.#file.assertOurs();
    return staging.beside(this.#database, () => this.#apply(edit, () => staging.copyInto(this.#database)));
  }

  /** Takes photos in and makes the edit that names them: all of it or nothing. */
  applyWithPhotos(edit: Edit, photos: readonly NewPhotoBytes[]): FileState {
    return this.#apply(edit, () => this.#blobs.add(photos));
  }

  /** The bytes of a photo or of its small copy; null where there is none of that id. */
  photoBytes(blobId: string): Uint8Array | null {
    if (!this.#file.holdsOurs()) throw overwritten(this.path);
    return this.#blobs.bytes(blobId);
  }

  /** A tile of a picture under the drawing; null where there is none (any more). */
  imageTile(key: PictureTileKey): Uint8Array | null {
    return this.#file.holdsOurs() ? this.#images.tile(key) : null;
  }

  /** Takes back the newest step; null where there is none. */
  undo(): Replay | null {
    this.#file.assertOurs();
    const found = this.#history.stepToUndo(this.#numberOf('position'));
    return found && this.#replay({ ...found.step, changes: inverse(found.step.changes) }, found.position);
  }

  /** Brings the step again that was taken back last; null where there is none. */
  redo(): Replay | null {
    this.#file.assertOurs();
    const found = this.#history.stepToRedo(this.#numberOf('position'));
    return found && this.#replay(found.step, found.position);
  }

  /** Brings what the file keeps for readers without the app up to date: `compute` is asked only where it is not. */
  refreshRegisters(compute: Compute): void {
    this.#file.assertOurs();
    const revision = this.#numberOf('revision');
    if (this.#numberOf('registersAt') === revision) return;
    const registers = compute(this.things());
    this.#file.write(() => this.#replaceRegisters(registers, revision));
  }

  /**
   * Takes out the pictures that nothing names any more. Done when a file is opened, so that within a sitting a deleted
   * photo or picture always comes back.
   */
  dropUnused(): void {
    const images = unusedImages(this.#database);
    const blobs = unusedBlobs(this.#database);
    if (images.length + blobs.length === 0) return;
    this.#file.write(() => {
      dropImages(this.#database, images);
      dropBlobs(this.#database, blobs);
    });
  }

  /**
   * Writes a whole copy, with its history, to another path. Where the file is not ours any more the copy is made of what is
   * kept in memory: all things, but no history, and of photos and pictures only what is still to be had. Answers what is
   * not; null: the copy is whole.
   */
  copyTo(path: string, replace: boolean, compute?: Compute): Lost | null {
    return publishFile(path, replace, (draftPath) =>
      this.#copyInto(draftPath) ? null : this.#makeFromMemory(draftPath, compute),
    );
  }

  close(): void {
    this.#file.close();
  }

  #apply(edit: Edit, alongside: () => void): FileState {
    this.#file.assertOurs();
    const revision = this.#numberOf('revision');
    if (edit.baseRevision !== revision) {
      throw outOfDate(message('host.files.outOfDate.revision', { stands: revision, madeOn: edit.baseRevision }));
    }
    if (edit.changes.length === 0) return this.#state;
    assertPropertyStays(edit);
    const joins = edit.mergeKey !== undefined && edit.mergeKey === this.#openMergeKey;
    this.#changeFile(() => {
      alongside();
      const written = this.#things.write(edit.changes);
      const position = this.#numberOf('position');
      return { written, position: joins ? this.#history.merge(position, edit) : this.#history.add(position, edit) };
    });
    this.#openMergeKey = edit.mergeKey;
    return this.#state;
  }

  #replay(step: Step, position: number): Replay {
    this.#openMergeKey = undefined;
    if (takesPropertyAway(step.changes)) {
      throw damaged((words) => words.stepWithoutProperty({ label: step.label }));
    }
    this.#changeFile(() => ({ written: this.#things.write(step.changes), position }));
    return { label: step.label, changes: step.changes.filter(isKnown), state: this.#state };
  }

  /** Makes one change of the file, which answers what it wrote and the new position in the history. */
  #changeFile(change: () => { readonly written: Written; readonly position: number }): void {
    try {
      const written = this.#file.write(() => {
        const { written, position } = change();
        this.#setFact.run(position, 'position');
        this.#setFact.run(this.#numberOf('revision') + 1, 'revision');
        return written;
      });
      this.#things.keep(written);
      this.#state = this.#readState();
    } catch (error) {
      // One that failed at its very end may be in the file all the same.
      if (!(error instanceof ProblemError) && this.#file.holdsOurs()) {
        this.#things.load();
        this.#state = this.#readState();
      }
      throw error;
    }
  }

  /** Copies the file as it lies; false, with no copy left, where it is not ours any more. */
  #copyInto(draftPath: string): boolean {
    if (!this.#isReadable()) return false;
    try {
      copyInto(this.#database, draftPath);
      restamp(draftPath);
    } catch (error) {
      if (this.#isReadable()) throw error;
    }
    if (this.#isReadable()) return true;
    if (existsSync(draftPath)) rmSync(draftPath);
    return false;
  }

  /** Whether the file is in reach and holds what we left in it. */
  #isReadable(): boolean {
    return orNull(() => this.#file.holdsOurs()) ?? false;
  }

  #makeFromMemory(draftPath: string, compute: Compute | undefined): Lost {
    const things = this.#things.all(this.path);
    const { revision } = this.#state;
    const registers = compute && orNull(() => compute(things.filter(isThing)));
    return makeDatabase(draftPath, readMigrations(), { things, revision, ...this.#origin }, (draft) => {
      if (registers) {
        new RegisterTable(draft).replace(registers);
        draft.prepare(`UPDATE fact SET value = ? WHERE name = 'registersAt'`).run(revision);
      }
      return salvageInto(draft, this.path, things);
    });
  }

  #readState(): FileState {
    const position = this.#numberOf('position');
    return {
      revision: this.#numberOf('revision'),
      undo: this.#history.undoLabel(position),
      redo: this.#history.redoLabel(position),
    };
  }

  #replaceRegisters(registers: Registers, revision: number): void {
    this.#registers.replace(registers);
    this.#setFact.run(revision, 'registersAt');
  }

  #numberOf(name: FactName): number {
    const value = this.#fact.get(name);
    if (Number.isSafeInteger(value)) return value as number;
    throw damaged((words) => words.fact({ path: this.path, name }));
  }
}

function assertPropertyStays(edit: Edit): void {
  if (takesPropertyAway(edit.changes)) {
    const words = plainWords().host.files.propertyStays;
    throw new ProblemError('not-valid', words.message, words.remedy);
  }
}

function takesPropertyAway(changes: readonly StoredChange[]): boolean {
  return changes.some(({ kind, after }) => kind === 'property' && after === null);
}

/** Whether the windows know what a change is of. */
function isKnown(change: StoredChange): change is Change {
  return isKind(change.kind);
}

/** What `work` answers; null where it can't. */
function orNull<T>(work: () => T): T | null {
  try {
    return work();
  } catch {
    return null;
  }
}
