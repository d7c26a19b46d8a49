import { randomUUID } from 'node:crypto';
import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import Sqlite, { type Database, type Statement } from 'better-sqlite3';
import { headerBytes } from './fileHeader.ts';
import { fileIdentity, identityOf } from './fileIdentity.ts';
import { moved, overwritten } from './problems.ts';

const smallTables = ['sqlite_schema', 'fact', 'thing', 'step', 'register'];

const setStamp = `UPDATE fact SET value = ? WHERE name = 'stamp'`;

/** How the file was left by our last write. */
interface Known {
  readonly sizeBytes: bigint;
  readonly changedAtNs: bigint;
  /** SQLite's header and the page with the file's stamp, as they lie on the disk. */
  readonly mark: Buffer;
}

/** What others have done to an open file: put it elsewhere (or away), or written into it. */
export type Trouble = 'moved' | 'overwritten';

/**
 * A project file that this process alone has open, and that is watched for what others do to it in spite of that: a lock
 * stops no copy from being laid over it. SQLite would not notice, and write its next pages in between those of the copy.
 *
 * Each write of ours puts a new random stamp into the file. Before the next one the file must lie where it was opened,
 * have the size and the time of change that ours left, and hold our stamp. Where only the time differs the file may just
 * have been touched: its tables are read anew, and where they are sound and hold what they held, that goes on. Anything else
 * means that the file is another one now, for good: nothing is written into it any more, not even by closing.
 *
 * Our own handle on the file is open from before SQLite opens it until after SQLite has closed it: where a process closes
 * any handle of a file, it loses all of its locks on it (POSIX).
 */
export class HeldFile {
  readonly path: string;
  readonly database: Database;
  readonly #handle: number;
  readonly #identity: string;
  /** Null where the file has no stamp that shows (before it is migrated): then one that is touched counts as overwritten. */
  #setStamp: Statement<[string]> | null = null;
  #stampPage = { at: 0, bytes: 0 };
  #known: Known | null = null;
  #isAsLeft: () => boolean = () => true;
  #overwritten = false;
  #closed = false;

  /** Opens and locks the file; reads nothing of it but what SQLite needs to lock it and to end an interrupted write. */
  constructor(path: string) {
    this.path = path;
    this.#handle = openSync(path, 'r');
    this.#identity = identityOf(fstatSync(this.#handle, { bigint: true }));
    let database: Database | undefined;
    try {
      database = new Sqlite(path, { timeout: 0, fileMustExist: true });
      this.database = database;
      lock(database);
      if (!this.isAt(path)) throw moved(path);
    } catch (error) {
      database?.close();
      closeSync(this.#handle);
      throw error;
    }
  }

  /** Watches the file from now on. Only where its tables are known to be ours; again after a migration. */
  watch(): void {
    const bytes = Number(this.database.pragma('page_size', { simple: true }));
    const page = this.database
      .prepare<[], number>(`SELECT rootpage FROM sqlite_schema WHERE type = 'table' AND name = 'fact'`)
      .pluck()
      .get();
    this.#stampPage = { at: ((page ?? 1) - 1) * bytes, bytes };
    const stamp = this.database
      .prepare<[], string>(`SELECT CAST(value AS TEXT) FROM fact WHERE name = 'stamp'`)
      .pluck()
      .get();
    this.#known = this.#asItLies();
    this.#setStamp = stamp && this.#known.mark.includes(stamp) ? this.database.prepare(setStamp) : null;
  }

  /** Asked when the file was touched: whether it still holds what was read from it or written into it. */
  whenTouched(isAsLeft: () => boolean): void {
    this.#isAsLeft = isAsLeft;
  }

  /** Whether the path leads to this very file, whatever it is called there. */
  isAt(path: string): boolean {
    return fileIdentity(path) === this.#identity;
  }

  /** Bytes of the file as they lie on the disk; fewer where it ends before. */
  bytesAt(at: number, length: number): Buffer {
    const bytes = Buffer.alloc(length);
    return bytes.subarray(0, readSync(this.#handle, bytes, 0, length, at));
  }

  /** What others have done to the file; null: nothing. Once overwritten, that for good. Out of reach counts as moved. */
  trouble(): Trouble | null {
    try {
      return this.#trouble();
    } catch {
      return 'moved';
    }
  }

  /** Whether the file holds what we left in it, wherever it lies now. SQLite may only be asked for anything where it does. */
  holdsOurs(): boolean {
    if (this.#overwritten) return false;
    const known = this.#known;
    if (!known || this.#closed) return true;
    const now = this.#asItLies();
    const isTouched = now.changedAtNs !== known.changedAtNs;
    if (now.sizeBytes !== known.sizeBytes || !now.mark.equals(known.mark) || (isTouched && !this.#setStamp)) {
      this.#giveUp();
      return false;
    }
    if (!isTouched) return true;
    // It may have held something else in between: what SQLite keeps of it in memory must not outlive that.
    this.database.pragma('shrink_memory');
    if (!this.#isSound()) {
      this.#giveUp();
      return false;
    }
    this.#known = now;
    return true;
  }

  /** Whether nothing on the disk leads to what this file holds any more: deleted, or another file put in its place. */
  isDeleted(): boolean {
    return !this.#closed && !this.isAt(this.path) && fstatSync(this.#handle, { bigint: true }).nlink === 0n;
  }

  /** Throws where the file is no longer where, or what, it was. */
  assertOurs(): void {
    const trouble = this.trouble();
    if (trouble) throw trouble === 'moved' ? moved(this.path) : overwritten(this.path);
  }

  /** Runs `work` as one transaction; writes nothing into a file that others have moved or overwritten. */
  write<T>(work: () => T): T {
    this.assertOurs();
    const stamp = randomUUID();
    let stamped = false;
    try {
      const result = this.database
        .transaction(() => {
          const result = work();
          // Up to here SQLite has written to its journal alone (cache_spill is off), so the file must be as we left it.
          this.#assertStillOurs();
          stamped = this.#setStamp?.run(stamp).changes === 1;
          return result;
        })
        .immediate();
      this.#remember(stamped ? stamp : null);
      return result;
    } catch (error) {
      if (this.#overwritten) this.close();
      // A write that failed at its very end may have gone through all the same: then the file is ours as well.
      else if (stamped && this.#asItLies().mark.includes(stamp)) this.#known = this.#asItLies();
      throw error;
    }
  }

  /** Lets go of the file. Writes nothing. */
  close(): void {
    if (this.#closed) return;
    this.#closed = true;
    this.database.close();
    closeSync(this.#handle);
  }

  #trouble(): Trouble | null {
    if (!this.holdsOurs()) return 'overwritten';
    return this.isAt(this.path) ? null : 'moved';
  }

  /** Photos and pictures aside, which may be hundreds of megabytes: nothing but themselves hangs on them. */
  #isSound(): boolean {
    try {
      const sound = smallTables.every(
        (table) => this.database.pragma(`main.quick_check(${table})`, { simple: true }) === 'ok',
      );
      return sound && this.#isAsLeft();
    } catch {
      return false;
    }
  }

  #assertStillOurs(): void {
    const known = this.#known;
    if (!this.isAt(this.path)) throw moved(this.path);
    if (!known) return;
    const now = this.#asItLies();
    if (now.sizeBytes === known.sizeBytes && now.mark.equals(known.mark)) return;
    this.#overwritten = true;
    throw overwritten(this.path);
  }

  /** Takes the file as it lies for ours, after a write with this stamp; not where the stamp is not to be found in it. */
  #remember(stamp: string | null): void {
    const now = this.#asItLies();
    if (stamp && !now.mark.includes(stamp)) {
      this.#giveUp();
      throw overwritten(this.path);
    }
    this.#known = now;
  }

  #giveUp(): void {
    this.#overwritten = true;
    this.close();
  }

  #asItLies(): Known {
    const { size, mtimeNs } = fstatSync(this.#handle, { bigint: true });
    const mark = Buffer.concat([this.bytesAt(0, headerBytes), this.bytesAt(this.#stampPage.at, this.#stampPage.bytes)]);
    return { sizeBytes: size, changedAtNs: mtimeNs, mark };
  }
}

/**
 * Takes the file for this process alone; the lock ends with the process, however that ends. Ends a write that was
 * interrupted. Does not read the file's tables, which may be a stranger's.
 */
function lock(database: Database): void {
  database.pragma('trusted_schema = OFF');
  database.pragma('locking_mode = EXCLUSIVE');
  database.exec('BEGIN EXCLUSIVE; COMMIT');
}
