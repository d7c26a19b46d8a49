import { allAtOnce, type Steps } from '../../model/steps.ts';
import { type ImprovementsFound, improvementsOf } from './improvements.ts';
import { type SwitchThrow, switchTableSteps } from './switchTable.ts';
import type { Power } from './types.ts';

/** What takes one solve after another: worked out beside the window. */
export interface PowerTables {
  readonly improvements: ImprovementsFound | null;
  readonly switches: readonly SwitchThrow[];
}

export function powerTables(power: Power): PowerTables {
  return allAtOnce(powerTablesSteps(power));
}

export function* powerTablesSteps(power: Power): Steps<PowerTables> {
  const improvements = improvementsOf(power);
  yield;
  return { improvements, switches: yield* switchTableSteps(power) };
}
