import { type EarthFieldEstimate, earthFieldOhm, type Rods } from './earthFieldOhm.ts';
import { MOST_TABULATED_RODS } from './multipleRodFactor.ts';

/**
 * The fewest rods of one kind that come down to `targetOhm`, with their estimate; `null` when not even the most that
 * the source covers do. Then longer rods, damper ground or a second field are needed, not more of the same.
 */
export function rodsForTarget(
  rod: Omit<Rods, 'rods'>,
  soilOhmM: number,
  targetOhm: number,
): (EarthFieldEstimate & { readonly rods: number }) | null {
  for (let rods = 1; rods <= MOST_TABULATED_RODS; rods++) {
    const estimate = earthFieldOhm({ ...rod, rods }, soilOhmM);
    if (estimate.ohm <= targetOhm) return { ...estimate, rods };
  }
  return null;
}
