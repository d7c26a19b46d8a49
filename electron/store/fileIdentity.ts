import { type BigIntStats, statSync } from 'node:fs';

/** Which file a path leads to, also by links: the same text for the same file; null where there is none. */
export function fileIdentity(path: string): string | null {
  const stats = statSync(path, { throwIfNoEntry: false, bigint: true });
  return stats ? identityOf(stats) : null;
}

export function identityOf(stats: BigIntStats): string {
  return `${stats.dev} ${stats.ino}`;
}
