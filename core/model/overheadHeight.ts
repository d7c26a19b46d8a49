import type { Crossing, CrossingDefaults, Gateway } from './things.ts';

/** Room for a person on a horse, and for machinery; an assumption of this project. Local rules often ask for more. */
const leastHeightM = { stock: 2.5, vehicles: 4.5 };

/** Least height of an overhead wire above what passes through a gateway, metres. */
export function leastOverheadHeightM({ vehicles }: Pick<Gateway, 'vehicles'>): number {
  return vehicles ? leastHeightM.vehicles : leastHeightM.stock;
}

/** Highest riser of a buried crossing, metres. */
export const highestRiserM = 4;

/**
 * Height of a crossing's ends above ground, metres, when it goes another way past its gateway: a riser's is no height for a
 * wire overhead, nor the other way round.
 */
export function heightWhenMade(
  method: Crossing['method'],
  { riserHeightM }: Pick<Crossing, 'riserHeightM'>,
  gateway: Pick<Gateway, 'vehicles'>,
  defaults: Pick<CrossingDefaults, 'riserHeightM'>,
): number {
  const leastM = leastOverheadHeightM(gateway);
  if (method === 'overhead') return Math.max(riserHeightM, leastM);
  return riserHeightM >= leastM || riserHeightM > highestRiserM ? defaults.riserHeightM : riserHeightM;
}
