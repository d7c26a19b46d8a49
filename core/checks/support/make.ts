import type { LonLat } from '../../geometry/types.ts';
import { type Message, message } from '../../words/message.ts';
import type { Fix, Found } from '../finding.ts';

/** Where rules come from. */
export const standard = message('checks.source.standard');
export const commonPractice = message('checks.source.commonPractice');
export const assumption = message('checks.source.assumption');

interface Parts {
  readonly message: Message;
  readonly remedy: Message;
  readonly source?: Message;
  readonly at?: LonLat | null;
  readonly fixes?: readonly Fix[];
  /** Tells several findings about the same things apart. */
  readonly part?: string | number;
}

/** A finding whose identity is its rule and what it is about. */
export function finding(
  rule: string,
  severity: Found['severity'],
  thingIds: readonly string[],
  { source, at, fixes, part, ...said }: Parts,
): Found {
  const about = [...thingIds].sort().join(',');
  const id = `${rule}:${about}${part === undefined ? '' : `#${part}`}`;
  return { id, rule, severity, ...said, source: source ?? null, thingIds, at: at ?? null, fixes: fixes ?? [] };
}
