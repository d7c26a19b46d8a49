/** The standard's reference load for an energiser's rated output: IEC 60335-2-76. */
export const REFERENCE_LOAD_OHM = 500;

/**
 * Internal resistance (ohm) from two peaks on the label, open circuit and into 500 ohm: Rs = 500 (V0 - V500) / V500.
 * A real energiser is a charged capacitor and a transformer, so this fits best near 500 ohm and is an estimate elsewhere.
 */
export function energiserInternalOhm(openCircuitV: number, into500OhmV: number): number {
  return (REFERENCE_LOAD_OHM * (openCircuitV - into500OhmV)) / into500OhmV;
}
