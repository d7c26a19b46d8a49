import { isDeepStrictEqual } from 'node:util';
import type { Database } from 'better-sqlite3';
import { type Body, changesBodies, isBody, upgradeTo } from '../../core/kinds/upgrade.ts';
import { parsed } from './parsed.ts';
import { damaged } from './problems.ts';
import type { StoredChange } from './thingTable.ts';

/**
 * Brings every body in a file from the version before migration `to` to that migration's shape: those of things with what
 * lies within them (handovers, kept plans, marks, what was left in the ground), and those of the steps of undo and redo.
 * Within the migration's transaction. Throws a `ProblemError` where a body is so spoilt that its step can't bear it.
 */
export function upgradeBodies(database: Database, to: number): void {
  if (!changesBodies(to)) return;
  upgradeThings(database, to);
  upgradeSteps(database, to);
}

interface ThingRow {
  readonly number: number;
  readonly kind: string;
  readonly id: string;
  readonly body: string;
}

/** The thing itself keeps its place in the order; what was split off from it comes after all others. */
function upgradeThings(database: Database, to: number): void {
  const update = database.prepare('UPDATE thing SET kind = ?, id = ?, body = ? WHERE number = ?');
  const insert = database.prepare('INSERT INTO thing (kind, id, body) VALUES (?, ?, ?)');
  const drop = database.prepare('DELETE FROM thing WHERE number = ?');
  const rows = database.prepare<[], ThingRow>('SELECT number, kind, id, body FROM thing ORDER BY number').all();
  for (const { number, kind, id, body } of rows) {
    const before = parsed(body);
    const [after, ...more] = upgraded(before, to, (words) => words.record({ kind, id }));
    if (after === before) continue;
    if (isBody(after)) update.run(after.kind, after.id, JSON.stringify(after), number);
    else drop.run(number);
    for (const other of more as readonly Body[]) insert.run(other.kind, other.id, JSON.stringify(other));
  }
}

interface StepRow {
  readonly seq: number;
  readonly label: string;
  readonly changes: string;
}

/** A step of which nothing is left is taken out: to undo it would be to undo nothing. */
function upgradeSteps(database: Database, to: number): void {
  const update = database.prepare('UPDATE step SET changes = ? WHERE seq = ?');
  const drop = database.prepare('DELETE FROM step WHERE seq = ?');
  const next = database.prepare<[number], StepRow>(
    'SELECT seq, label, changes FROM step WHERE seq > ? ORDER BY seq LIMIT 1',
  );
  for (let row = next.get(-1); row; row = next.get(row.seq)) {
    const { seq, label, changes } = row;
    const before = parsed(changes);
    if (!Array.isArray(before)) continue;
    const after = before.flatMap((change: unknown) => changesUpgraded(change, to, label));
    if (after.length === before.length && after.every((change, i) => change === before[i])) continue;
    if (after.length > 0) update.run(JSON.stringify(after), seq);
    else drop.run(seq);
  }
}

/** The changes that one is now: of each of the things that its thing has become. */
function changesUpgraded(change: unknown, to: number, label: string): readonly unknown[] {
  if (typeof change !== 'object' || change === null) return [change];
  const stored = change as StoredChange;
  const [before, after] = [stored.before, stored.after].map((body) =>
    body === null ? [] : upgraded(body, to, (words) => words.step({ label })),
  ) as [StoredChange['before'][], StoredChange['before'][]];
  if (isSameAs(before, stored.before) && isSameAs(after, stored.after)) return [change];
  const made = new Map<string, StoredChange>();
  for (const body of before) if (body) made.set(keyOf(body), { ...stored, ...keysOf(body), before: body, after: null });
  for (const body of after) {
    if (body)
      made.set(keyOf(body), { ...stored, ...keysOf(body), before: made.get(keyOf(body))?.before ?? null, after: body });
  }
  return [...made.values()].filter((each) => !isDeepStrictEqual(each.before, each.after));
}

function isSameAs(bodies: readonly unknown[], body: unknown): boolean {
  return body === null ? bodies.length === 0 : bodies.length === 1 && bodies[0] === body;
}

function keysOf({ kind, id }: { readonly kind: string; readonly id: string }) {
  return { kind, id };
}

function keyOf({ kind, id }: { readonly kind: string; readonly id: string }): string {
  return `${kind} ${id}`;
}

/** What a body is after the migration; one that is none stays as it is, and is told of by whoever reads it. */
function upgraded(body: unknown, to: number, what: Parameters<typeof damaged>[0]): readonly unknown[] {
  if (!isBody(body)) return [body];
  try {
    return upgradeTo(to, body);
  } catch {
    throw damaged(what);
  }
}
