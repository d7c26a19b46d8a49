import { isBody, upgrade } from '../kinds/upgrade.ts';
import type { Thing } from '../model/things.ts';
import { thingSchema } from './thingSchemas.ts';

/** What a body is; `at`: the field of it that is not as it should be. */
export type ReadBody =
  | { readonly ok: true; readonly things: readonly Thing[] }
  | { readonly ok: false; readonly at: string };

/**
 * The things that a body of this version is now, mostly one, with every field that it came with, also those that are not
 * known. Every reader of bodies reads them here: of a project file and of a file for exchange.
 */
export function readBody(kind: string, version: number, body: unknown): ReadBody {
  if (!isBody(body)) return { ok: false, at: kind };
  const bodies = upgrade(kind, version, body);
  for (const each of bodies) {
    const read = thingSchema.safeParse(each);
    if (!read.success) return { ok: false, at: read.error.issues[0]?.path.join('.') || kind };
  }
  return { ok: true, things: bodies as readonly unknown[] as readonly Thing[] };
}
