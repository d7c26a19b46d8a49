import { isDeepStrictEqual } from 'node:util';
import type { Database, Statement } from 'better-sqlite3';
import * as z from 'zod';
import { readBody } from '../../core/api/readBody.ts';
import { bodyVersion } from '../../core/kinds/upgrade.ts';
import { isKind } from '../../core/model/project.ts';
import { parsed } from './parsed.ts';
import { damaged } from './problems.ts';
import type { StoredChange } from './thingTable.ts';

/** How much of the past is kept: at most so many steps, and so many bytes of them; the newest step always. */
export const historyLimits = { steps: 1000, bytes: 32 * 1024 * 1024 };

export interface Step {
  readonly label: string;
  readonly changes: readonly StoredChange[];
}

interface StepRow {
  readonly seq: number;
  readonly label: string;
  readonly changes: string;
}

/** The steps of undo and redo. `position` is the seq of the newest step that is applied; 0: none. */
export class History {
  readonly #at: Statement<[number], StepRow>;
  readonly #after: Statement<[number], StepRow>;
  readonly #labelAt: Statement<[number], string>;
  readonly #labelAfter: Statement<[number], string>;
  readonly #insert: Statement<[number, string, string, string]>;
  readonly #update: Statement<[string, string, string, number]>;
  readonly #dropAfter: Statement<[number]>;
  readonly #dropUpTo: Statement<[number]>;
  readonly #sizes: Statement<[], { seq: number; bytes: number }>;

  constructor(database: Database) {
    this.#at = database.prepare('SELECT seq, label, changes FROM step WHERE seq <= ? ORDER BY seq DESC LIMIT 1');
    this.#after = database.prepare('SELECT seq, label, changes FROM step WHERE seq > ? ORDER BY seq LIMIT 1');
    this.#labelAt = database
      .prepare<[number], string>('SELECT label FROM step WHERE seq <= ? ORDER BY seq DESC LIMIT 1')
      .pluck();
    this.#labelAfter = database
      .prepare<[number], string>('SELECT label FROM step WHERE seq > ? ORDER BY seq LIMIT 1')
      .pluck();
    this.#insert = database.prepare('INSERT INTO step (seq, at, label, changes) VALUES (?, ?, ?, ?)');
    this.#update = database.prepare('UPDATE step SET at = ?, label = ?, changes = ? WHERE seq = ?');
    this.#dropAfter = database.prepare('DELETE FROM step WHERE seq > ?');
    this.#dropUpTo = database.prepare('DELETE FROM step WHERE seq <= ?');
    this.#sizes = database.prepare('SELECT seq, octet_length(changes) AS bytes FROM step ORDER BY seq DESC');
  }

  undoLabel(position: number): string | null {
    return this.#labelAt.get(position) ?? null;
  }

  redoLabel(position: number): string | null {
    return this.#labelAfter.get(position) ?? null;
  }

  /** The step that undo takes back, with the position after that. */
  stepToUndo(position: number): { readonly step: Step; readonly position: number } | null {
    const row = this.#at.get(position);
    return row ? { step: stepOf(row), position: row.seq - 1 } : null;
  }

  /** The step that redo brings again, with the position after that. */
  stepToRedo(position: number): { readonly step: Step; readonly position: number } | null {
    const row = this.#after.get(position);
    return row ? { step: stepOf(row), position: row.seq } : null;
  }

  /** Adds a step after `position`, in place of whatever could be brought again there; answers the new position. */
  add(position: number, step: Step): number {
    this.#dropAfter.run(position);
    this.#insert.run(position + 1, now(), step.label, JSON.stringify(step.changes));
    this.#forgetOldest();
    return position + 1;
  }

  /** Makes one step of the step at `position` and this one; answers the new position. */
  merge(position: number, step: Step): number {
    const row = this.#at.get(position);
    if (!row) return this.add(position, step);
    const changes = mergeChanges(stepOf(row).changes, step.changes);
    if (changes.length === 0) {
      this.#dropAfter.run(row.seq - 1);
      return row.seq - 1;
    }
    this.#update.run(now(), step.label, JSON.stringify(changes), row.seq);
    this.#forgetOldest();
    return row.seq;
  }

  #forgetOldest(): void {
    let steps = 0;
    let bytes = 0;
    for (const size of this.#sizes.all()) {
      steps += 1;
      bytes += size.bytes;
      if (steps > 1 && (steps > historyLimits.steps || bytes > historyLimits.bytes)) {
        this.#dropUpTo.run(size.seq);
        return;
      }
    }
  }
}

/** What two edits, one after the other, change together; nothing for a thing that ends as it began. */
export function mergeChanges<C extends StoredChange>(first: readonly C[], second: readonly C[]): C[] {
  const merged = new Map<string, C>();
  for (const change of [...first, ...second]) {
    const key = `${change.kind} ${change.id}`;
    merged.set(key, { ...change, before: (merged.get(key) ?? change).before });
  }
  return [...merged.values()].filter(({ before, after }) => !isDeepStrictEqual(before, after));
}

/** A change as it stands in a step: of one thing, which its bodies say too. */
const storedThing = z.looseObject({ kind: z.string(), id: z.string() }).nullable();
const storedChanges: z.ZodType<readonly StoredChange[]> = z.array(
  z
    .looseObject({ kind: z.string(), id: z.string(), before: storedThing, after: storedThing })
    .refine(({ kind, id, before, after }) =>
      [before, after].every((body) => body === null || (body.kind === kind && body.id === id)),
    ),
);

function stepOf({ label, changes }: StepRow): Step {
  const value = parsed(changes);
  if (storedChanges.safeParse(value).success) {
    const stored = value as readonly StoredChange[];
    const isOfOneEach = new Set(stored.map(({ kind, id }) => `${kind} ${id}`)).size === stored.length;
    if (isOfOneEach && stored.every(({ before, after }) => isRead(before) && isRead(after))) {
      return { label, changes: stored };
    }
  }
  throw damaged((words) => words.step({ label }));
}

/** Whether a body is what its kind should be; of a kind that a newer version made it is kept as it is. */
function isRead(body: StoredChange['before']): boolean {
  return body === null || !isKind(body.kind) || readBody(body.kind, bodyVersion, body).ok;
}

function now(): string {
  return new Date().toISOString();
}
