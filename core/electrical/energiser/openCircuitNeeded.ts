/**
 * The open-circuit peak (V) that would lift the weakest place to `minimumV`, with the same internal resistance: the
 * circuit is linear, so every voltage grows in proportion. `Infinity` where the weakest place reads 0 V.
 */
export function openCircuitNeeded(openCircuitV: number, weakestV: number, minimumV: number): number {
  return weakestV > 0 ? (openCircuitV * minimumV) / weakestV : Infinity;
}
