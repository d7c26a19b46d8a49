/**
 * Resistance to earth of one vertical driven rod (ohm): R = rho / (2 pi L) (ln(4 L / a) - 1).
 * H. B. Dwight, "Calculation of Resistances to Ground", AIEE Transactions 55 (1936). Uniform soil; the rod much
 * longer than thick.
 *
 * @param soilOhmM resistivity of the soil
 * @param lengthM buried length
 * @param radiusM radius of the rod, not its diameter
 */
export function dwightRodOhm(soilOhmM: number, lengthM: number, radiusM: number): number {
  return (soilOhmM / (2 * Math.PI * lengthM)) * (Math.log((4 * lengthM) / radiusM) - 1);
}
