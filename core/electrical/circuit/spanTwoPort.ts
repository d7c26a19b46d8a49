import type { Span } from './circuit.ts';
import { siemens } from './siemens.ts';

/**
 * A run as the exact pi circuit of a leaky line: `seriesS` between its ends, `shuntS` to earth at each end (siemens).
 *
 * Telegrapher's equations at DC (any circuit textbook): with R the run's series resistance, G its leakage
 * conductance and theta = sqrt(R G),
 *
 *     seriesS = (1/R) theta / sinh(theta)        shuntS = (G/2) tanh(theta/2) / (theta/2)
 *
 * Both are positive, so nodes can be eliminated without a single subtraction. A run of no resistance is a perfect
 * joint (`seriesS` infinite). Far beyond any fence (theta above 700) `seriesS` fades to 0 and stays finite.
 */
export interface PiCircuit {
  seriesS: number;
  shuntS: number;
}

/** Below this theta^2 the power series is exact to a double and needs no exponentials. */
const SERIES_BELOW = 0.01;

/** Fills `out` (so that a hundred thousand runs make no garbage) and returns it. */
export function spanTwoPort(span: Span, out: PiCircuit = { seriesS: 0, shuntS: 0 }): PiCircuit {
  const km = span.lengthM / 1000;
  const seriesOhm = span.ohmPerKm * km;
  const leakS = km / span.leakageOhmKm;
  const z = seriesOhm * leakS;
  if (z < SERIES_BELOW) {
    const h = z / 4;
    const sinhShare =
      1 - (z / 6) * (1 - z * (7 / 60) * (1 - z * (31 / 294) * (1 - z * (127 / 1240) * (1 - z * (2555 / 25146)))));
    const tanhShare =
      1 - (h / 3) * (1 - h * (2 / 5) * (1 - h * (17 / 42) * (1 - h * (62 / 153) * (1 - h * (691 / 1705)))));
    out.seriesS = sinhShare * siemens(seriesOhm);
    out.shuntS = (leakS / 2) * tanhShare;
  } else {
    const theta = Math.sqrt(z);
    const decay = Math.exp(-theta);
    const missing = -Math.expm1(-theta);
    out.seriesS = (2 * theta * decay) / (missing * (1 + decay)) / seriesOhm;
    out.shuntS = (leakS / theta) * (missing / (1 + decay));
  }
  return out;
}
