import type { Span } from './circuit/circuit.ts';
import { lowestInSpan } from './lowestInSpan.ts';
import { voltageAlongSpan } from './voltageAlongSpan.ts';

/** Halvings of a run's length: far beyond a millimetre. */
const HALVINGS = 40;

/**
 * Metres of a run that read below `leastV`, from the voltages at its ends. Along a run the voltage is a hanging curve
 * (convex), so what is below lies in one piece: all of it where both ends are below, else from its lowest place out.
 */
export function lengthBelow(span: Span, fromV: number, toV: number, leastV: number): number {
  const { lengthM } = span;
  if (fromV < leastV && toV < leastV) return lengthM;
  const lowest = lowestInSpan(span, fromV, toV) ?? (fromV < toV ? at(0, fromV) : at(lengthM, toV));
  if (!(lowest.volts < leastV)) return 0;
  const crossing = (sound: number): number => {
    let [low, high] = [lowest.distanceM, sound];
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2;
      if (voltageAlongSpan(span, fromV, toV, middle) < leastV) low = middle;
      else high = middle;
    }
    return low;
  };
  const begins = fromV < leastV ? 0 : crossing(0);
  const ends = toV < leastV ? lengthM : crossing(lengthM);
  return ends - begins;
}

function at(distanceM: number, volts: number) {
  return { distanceM, volts };
}
