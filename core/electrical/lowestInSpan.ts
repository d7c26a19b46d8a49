import type { Span } from './circuit/circuit.ts';

export interface LowestInSpan {
  /** From the run's `from` end. */
  readonly distanceM: number;
  readonly volts: number;
}

/**
 * Where a run that is fed from both ends reads least, from the voltages at its ends; `null` where that is at an end.
 * With V(x) = a e^(-kx) + b e^(-k(L - x)) and theta = kL (telegrapher's equations at DC), the least is
 * 2 sqrt(a b) e^(-theta/2), at x = L/2 + ln(a/b) / 2k.
 */
export function lowestInSpan(span: Span, fromV: number, toV: number): LowestInSpan | null {
  const km = span.lengthM / 1000;
  const z = ((span.ohmPerKm * km) / span.leakageOhmKm) * km;
  // Ends further apart than cosh(theta) < 1 + theta^2 allows (for theta under 1) rule it out without exponentials.
  if (!(z > 0) || (z < 1 && Math.max(fromV, toV) > Math.min(fromV, toV) * (1 + z))) return null;
  const theta = Math.sqrt(z);
  const decay = Math.exp(-theta);
  const scale = -Math.expm1(-2 * theta);
  const a = (fromV - toV * decay) / scale;
  const b = (toV - fromV * decay) / scale;
  if (!(a > 0 && b > 0)) return null;
  const share = 0.5 + Math.log(a / b) / (2 * theta);
  if (!(share > 0 && share < 1)) return null;
  return { distanceM: share * span.lengthM, volts: 2 * Math.sqrt(a * b) * Math.exp(-theta / 2) };
}
