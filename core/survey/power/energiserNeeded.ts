import { REFERENCE_LOAD_OHM } from '../../electrical/energiser/internalOhm.ts';
import { openCircuitNeeded } from '../../electrical/energiser/openCircuitNeeded.ts';
import { propertyOf } from '../../model/project.ts';
import type { Estimate, Power } from './types.ts';

/** Label figures of an energiser of the same internal resistance that would just hold the stock at the weakest place. */
export interface EnergiserNeeded {
  readonly energiserId: string;
  readonly openCircuitV: number;
  readonly into500OhmV: number;
  /** Already so, or above: the margin is how many times what is needed the energiser gives. */
  readonly margin: number;
}

/** One for each supply that has fence; the figures are estimates. */
export function energisersNeeded({ project, supplies }: Power, estimate: Estimate): EnergiserNeeded[] {
  const { stockMinimumV } = propertyOf(project).power;
  return supplies.flatMap(({ energiser, internalOhm }, index) => {
    const weakest = estimate.supplies[index]!.weakest;
    if (!weakest || !(weakest.volts > 0)) return [];
    const openCircuitV = openCircuitNeeded(energiser.openCircuitV, weakest.volts, stockMinimumV);
    const into500OhmV = (openCircuitV * REFERENCE_LOAD_OHM) / (REFERENCE_LOAD_OHM + internalOhm);
    return [{ energiserId: energiser.id, openCircuitV, into500OhmV, margin: weakest.volts / stockMinimumV }];
  });
}
