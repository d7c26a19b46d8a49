import type { Yardstick } from '../../model/yardstick.ts';
import type { TestSheet } from '../types.ts';
import type { Power } from './types.ts';
import { standingOf, yardstickAt } from './yardstick.ts';

/** All switches that stand open while a section is tested: those of its sheet, and what normally stands open otherwise. */
export function openForSheet(
  { normallyOpen }: Power,
  { open, closed }: Pick<TestSheet, 'open' | 'closed'>,
): Set<string> {
  return new Set([...open, ...[...normallyOpen].filter((id) => !closed.includes(id))]);
}

/** What each reading of a test sheet is judged by, in the order of `readAt`. `runId`: the run that is under way. */
export function sheetYardsticks(power: Power, sheet: TestSheet, runId?: string): Yardstick[] {
  const standing = standingOf(power, openForSheet(power, sheet));
  return sheet.readAt.map(({ node }) =>
    yardstickAt(power, { node, standing, ...(runId === undefined ? {} : { runId }) }),
  );
}
