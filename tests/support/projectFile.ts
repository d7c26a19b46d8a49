import Sqlite, { type Database } from 'better-sqlite3';
import { onTestFinished } from 'vitest';
import type { Edit } from '../../core/api/projectApi.ts';
import type { Problem } from '../../core/api/result.ts';
import { newProperty, startingFenceTypes } from '../../core/model/defaults.ts';
import type { Change } from '../../core/model/difference.ts';
import type { Post, Thing } from '../../core/model/things.ts';
import { problemOf } from '../../electron/store/problems.ts';
import { createProjectFile, openProjectFile } from '../../electron/store/projectFile.ts';
import type { ProjectStore } from '../../electron/store/projectStore.ts';

export const startingThings: readonly Thing[] = [newProperty('Test property'), ...startingFenceTypes()];

/** A new project file. */
export function makeFile(path: string, things: readonly Thing[] = startingThings): string {
  createProjectFile(path, things, 'Undergate test');
  return path;
}

/** A new project file, open; closed with the test. */
export function makeStore(path: string, things: readonly Thing[] = startingThings): ProjectStore {
  return openStore(makeFile(path, things));
}

/** The file, open; closed with the test. */
export function openStore(path: string): ProjectStore {
  const { store } = openProjectFile(path);
  onTestFinished(() => store.close());
  return store;
}

export function post(id: string, name = id): Post {
  return { kind: 'post', id, name, at: [175.5, -37.9], role: 'strainer', note: '' };
}

export function made(after: Thing): Change {
  return { kind: after.kind, id: after.id, before: null, after };
}

export function changed(before: Thing, after: Thing): Change {
  return { kind: after.kind, id: after.id, before, after };
}

export function gone(before: Thing): Change {
  return { kind: before.kind, id: before.id, before, after: null };
}

/** An edit on the store as it stands. */
export function edit(store: ProjectStore, label: string, changes: readonly Change[], mergeKey?: string): Edit {
  const { revision: baseRevision } = store.state();
  return { baseRevision, label, changes, ...(mergeKey === undefined ? {} : { mergeKey }) };
}

/** The problem that `work` on the file runs into. Fails the test where it runs through. */
export function problemIn(path: string, work: () => unknown): Problem {
  try {
    work();
  } catch (error) {
    return problemOf(error, path);
  }
  throw new Error('Expected a problem, but it went well.');
}

/** Reads or changes a file with plain SQLite, past the store. */
export function withSqlite<T>(path: string, work: (database: Database) => T): T {
  const database = new Sqlite(path);
  try {
    return work(database);
  } finally {
    database.close();
  }
}
