import { dwightRodOhm } from './dwightRod.ts';
import { multipleRodFactor, type RodFactor } from './multipleRodFactor.ts';

export interface Rods {
  readonly rods: number;
  readonly rodLengthM: number;
  readonly rodDiameterMm: number;
}

export interface EarthFieldEstimate extends RodFactor {
  readonly ohm: number;
  readonly singleRodOhm: number;
}

/** Resistance of n equal rods about one rod length apart in uniform soil: Rn = F R1 / n. Estimate; the earth test decides. */
export function earthFieldOhm({ rods, rodLengthM, rodDiameterMm }: Rods, soilOhmM: number): EarthFieldEstimate {
  const singleRodOhm = dwightRodOhm(soilOhmM, rodLengthM, rodDiameterMm / 2000);
  const { factor, coverage } = multipleRodFactor(rods);
  return { ohm: (factor * singleRodOhm) / rods, singleRodOhm, factor, coverage };
}
