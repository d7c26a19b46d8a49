import type { Database, Statement } from 'better-sqlite3';

/** Registers by kind, each row as plain data: `{ section: [{ letter: 'A', fenceLengthM: 1210.4, ... }] }`. */
export type Registers = Readonly<Record<string, readonly object[]>>;

/** What the app computed from the file, kept in it for readers without the app. The app itself never reads it. */
export class RegisterTable {
  readonly #clear: Statement<[]>;
  readonly #insert: Statement<[string, number, string]>;

  constructor(database: Database) {
    this.#clear = database.prepare('DELETE FROM register');
    this.#insert = database.prepare('INSERT INTO register (kind, row, body) VALUES (?, ?, ?)');
  }

  replace(registers: Registers): void {
    this.#clear.run();
    for (const [kind, rows] of Object.entries(registers)) {
      rows.forEach((row, index) => {
        this.#insert.run(kind, index + 1, JSON.stringify(row));
      });
    }
  }
}
