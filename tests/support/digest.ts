import { createHash } from 'node:crypto';

/** A short text that differs where the things do. */
export function digest(things: unknown): string {
  return createHash('sha256').update(JSON.stringify(things)).digest('hex').slice(0, 16);
}
