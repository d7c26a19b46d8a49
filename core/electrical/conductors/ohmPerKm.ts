/** R = rho L / A for one kilometre (ohm/km). `microOhmM`: resistivity in micro-ohm metres; `areaMm2`: metal, without gaps. */
export function ohmPerKmOfArea(microOhmM: number, areaMm2: number): number {
  return (1000 * microOhmM) / areaMm2;
}

/** Ohm/km of a round wire of `diameterMm`. */
export function ohmPerKmOfRoundWire(microOhmM: number, diameterMm: number): number {
  return ohmPerKmOfArea(microOhmM, (Math.PI / 4) * diameterMm ** 2);
}

/** Ohm/km of `count` equal wires side by side, joined at both ends. */
export function ohmPerKmInParallel(ohmPerKm: number, count: number): number {
  return ohmPerKm / count;
}
