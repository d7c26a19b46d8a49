import { type Lifts, liftsOf } from './lifts.ts';
import { type SwitchThrow, switchTable } from './switchTable.ts';
import type { Power } from './types.ts';

/** What takes one solve after another: worked out beside the window. */
export interface PowerTables {
  readonly lifts: Lifts | null;
  readonly switches: readonly SwitchThrow[];
}

export function powerTables(power: Power): PowerTables {
  return { lifts: liftsOf(power), switches: switchTable(power) };
}
