import { copyFileSync, existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Body, upgrade } from '../../../core/kinds/upgrade.ts';
import { registersOf } from '../../../electron/host/registers.ts';
import { readMigrations } from '../../../electron/store/migrations.ts';
import { edit, gone, openStore, post, withSqlite } from '../../support/projectFile.ts';
import { propertyDigest } from '../../support/propertyDigest.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

const folder = join(import.meta.dirname, 'samples');
const versions = readMigrations().map(({ number }) => number);
const sampleOf = (version: number) => join(folder, `v${version}.undergate`);

/** A copy of a sample, to be opened. */
function copyOf(version: number): string {
  const path = join(temporaryFolder(), 'Farm.undergate');
  copyFileSync(sampleOf(version), path);
  return path;
}

/** Rows of a table in which a column holds JSON, in the order of the table. */
function jsonIn(path: string, sql: string): unknown[] {
  return withSqlite(path, (database) =>
    database
      .prepare<[], string>(sql)
      .pluck()
      .all()
      .map((text) => JSON.parse(text) as unknown),
  );
}

/** The same value, its numbers to one part in a million: a length is not worked out to the last digit in every version. */
function about(value: unknown): unknown {
  if (typeof value === 'number')
    return expect.toSatisfy((other: number) => Math.abs(other - value) <= 1e-6 * Math.max(1, Math.abs(value)));
  if (Array.isArray(value)) return value.map(about);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([field, each]) => [field, about(each)]));
}

test('each version has its sample, of no more than 300 kB, and what it comes to', () => {
  for (const version of versions) {
    const sample = sampleOf(version);
    const missing = `migrations/ has ${version}, samples/ has no v${version}: see samples/README.md`;
    expect(existsSync(sample), missing).toBe(true);
    expect(existsSync(sample.replace(/undergate$/, 'json')), missing).toBe(true);
    expect(statSync(sample).size).toBeLessThan(300_000);
    expect(withSqlite(copyOf(version), (database) => database.pragma('user_version', { simple: true }))).toBe(version);
  }
  expect(readdirSync(folder).filter((name) => name.endsWith('.undergate'))).toHaveLength(versions.length);
});

describe.each(versions)('the sample of version %i', (version) => {
  test('gives the same property', () => {
    const path = copyOf(version);
    const bodies = jsonIn(path, 'SELECT body FROM thing ORDER BY number') as Body[];
    const store = openStore(path);
    const things = store.things();
    const digest = JSON.parse(readFileSync(sampleOf(version).replace(/undergate$/, 'json'), 'utf8')) as unknown;
    expect(JSON.parse(JSON.stringify(propertyDigest(things)))).toEqual(about(digest));
    const now = bodies.flatMap((body) => upgrade(String(body.kind), version, body));
    expect(new Map(things.map((thing) => [thing.id, thing]))).toEqual(new Map(now.map((body) => [body.id, body])));
    expect(store.holdsUnknown(things)).toBe(false);
  });

  test('comes to what its own version worked out', () => {
    const path = copyOf(version);
    for (const [kind, rows] of Object.entries(registersOf(openStore(copyOf(version)).things()))) {
      const worked = jsonIn(path, `SELECT body FROM register WHERE kind = '${kind}' ORDER BY row`);
      const now = JSON.parse(JSON.stringify(rows)) as object[];
      // Where lies what was left in the ground was worked out from version 7 on.
      if (worked.length > 0)
        expect(now).toEqual(worked.map((row) => expect.objectContaining(about(row) as object) as unknown));
      else expect(kind).toBe('inGround');
    }
  });

  test('goes on: all steps back, all steps again, and a further edit', () => {
    const store = openStore(copyOf(version));
    const before = store.things();
    const labels: string[] = [];
    for (let step = store.undo(); step; step = store.undo()) labels.push(step.label);
    expect(labels.slice(0, 2)).toEqual(['Name it', 'Place a post']);
    expect(store.things()).not.toContainEqual(expect.objectContaining({ id: 'older' }));
    for (let i = 0; i < labels.length; i++) store.redo();
    const byId = (things: readonly { readonly kind: string; readonly id: string }[]) =>
      new Map(things.map((thing) => [`${thing.kind} ${thing.id}`, thing]));
    expect(byId(store.things())).toEqual(byId(before));
    expect(store.redo()!.label).toBe('Place another');
    const placed = store.things().find(({ id }) => id === 'undone')!;
    expect(store.apply(edit(store, 'Take it away', [gone(placed)])).undo).toBe('Take it away');
    expect(store.things()).not.toContainEqual(post('undone'));
  });
});
