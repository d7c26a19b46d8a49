import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { upgradeBodies } from './upgradeBodies.ts';

export interface Migration {
  /** 1, 2, 3, ...; the file's user_version after it. */
  readonly number: number;
  readonly fileName: string;
  readonly sql: string;
}

export const migrationsFolder = join(import.meta.dirname, '..', '..', 'migrations');

/** The migrations of a folder in order. Throws where a number is missing, used twice, or a file is misnamed. */
export function readMigrations(folder: string = migrationsFolder): Migration[] {
  const fileNames = readdirSync(folder)
    .filter((fileName) => fileName.endsWith('.sql'))
    .sort();
  return fileNames.map((fileName, index) => {
    const number = Number(/^(\d{4})-[a-z0-9-]+\.sql$/.exec(fileName)?.[1]);
    if (number !== index + 1) {
      throw new Error(`migrations/${fileName}: expected number ${index + 1}, as in 0001-what-it-does.sql.`);
    }
    return { number, fileName, sql: readFileSync(join(folder, fileName), 'utf8') };
  });
}

/** The version that a file of these migrations has. */
export function newestVersion(migrations: readonly Migration[]): number {
  return migrations.at(-1)?.number ?? 0;
}

/**
 * Brings the file to the newest version in one transaction: through all migrations, each with its number and with what it
 * does to bodies after its SQL, or none.
 */
export function migrate(database: Database, migrations: readonly Migration[]): void {
  const due = migrations.filter(({ number }) => number > versionOf(database));
  if (due.length === 0) return;
  // A migration may change the words that a table is made with (0006 does): SQLite forbids that but to those who ask.
  database.unsafeMode(true);
  try {
    database
      .transaction(() => {
        for (const { number, sql } of due) {
          database.exec(sql);
          upgradeBodies(database, number);
          database.pragma(`user_version = ${number}`);
        }
      })
      .exclusive();
  } finally {
    database.pragma('writable_schema = OFF');
    database.unsafeMode(false);
  }
}

export function versionOf(database: Database): number {
  return Number(database.pragma('user_version', { simple: true }));
}
