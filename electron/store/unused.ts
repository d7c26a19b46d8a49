import type { Database } from 'better-sqlite3';

/** How our ids are written in JSON: the hash of a photo, a kind of thing and a UUID. */
const idInJson = /"([\w-]{1,200})"/g;
const isIdOfOurs = /^[\w-]{1,200}$/;

/**
 * Which of the ids nothing names any more: neither a thing of these kinds, nor a step that undo or redo could bring back, nor,
 * in a field or of a kind that only a newer version knows, any other thing. Goes through them once, however many ids there
 * are, and not at all through the steps and the others where things of these kinds name every id.
 */
export function notNamed(database: Database, ids: readonly string[], kinds: readonly string[]): string[] {
  // What is called otherwise could be missed below.
  const left = new Set(ids.filter((id) => isIdOfOurs.test(id)));
  const bodies = database.prepare<[string], string>('SELECT body FROM thing WHERE kind = ?').pluck();
  const steps = database.prepare<[], string>('SELECT changes FROM step').pluck();
  for (const kind of kinds) takeOutNamed(left, () => bodies.iterate(kind));
  takeOutNamed(left, () => steps.iterate());
  takeOutNamed(left, () => database.prepare<[], string>('SELECT body FROM thing').pluck().iterate());
  return [...left];
}

/** What a text of JSON names that could be an id. */
export function* idsIn(json: string): Generator<string> {
  for (const [, id] of json.matchAll(idInJson)) yield id!;
}

function takeOutNamed(ids: Set<string>, texts: () => Iterable<string>): void {
  if (ids.size === 0) return;
  for (const text of texts()) {
    for (const id of idsIn(text)) ids.delete(id);
    if (ids.size === 0) return;
  }
}
