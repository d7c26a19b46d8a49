import type { Span } from './circuit.ts';

/** Slopes of a run's pi circuit against its whole leakage conductance G, its resistance held: d(seriesS)/dG and d(shuntS)/dG. */
export interface PiSlope {
  readonly series: number;
  readonly shunt: number;
}

/**
 * From `spanTwoPort`'s formulas: d(seriesS)/dG = (1 - theta coth theta) / (2 theta sinh theta), from -1/6 at no leakage;
 * d(shuntS)/dG = (tanh(theta/2) / (theta/2) + sech^2(theta/2)) / 4, from 1/2.
 */
export function spanLeakageSlope(span: Span): PiSlope {
  const km = span.lengthM / 1000;
  const z = ((span.ohmPerKm * km) / span.leakageOhmKm) * km;
  const theta = Math.sqrt(z);
  if (theta < 0.02) return { series: -(1 / 6) * (1 - (7 / 30) * z), shunt: 0.5 - z / 12 };
  if (theta > 300) return { series: 0, shunt: 1 / (2 * theta) };
  const half = theta / 2;
  const cosh = Math.cosh(half);
  return {
    series: (1 - theta / Math.tanh(theta)) / (2 * theta * Math.sinh(theta)),
    shunt: (Math.tanh(half) / half + 1 / (cosh * cosh)) / 4,
  };
}
