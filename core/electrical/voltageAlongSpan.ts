import type { Span } from './circuit/circuit.ts';

/**
 * Voltage inside a run, `distanceM` from its `from` end, from the voltages at its ends:
 * V(x) = (Vfrom sinh(k (L - x)) + Vto sinh(k x)) / sinh(k L), k = sqrt(ohmPerKm / leakageOhmKm) per km.
 * Telegrapher's equations at DC, any circuit textbook. A straight line where nothing leaks; distances outside the run
 * are taken to its nearer end.
 */
export function voltageAlongSpan(span: Span, fromV: number, toV: number, distanceM: number): number {
  if (span.lengthM === 0) return fromV;
  const share = Math.min(1, Math.max(0, distanceM / span.lengthM));
  const theta = Math.sqrt(span.ohmPerKm / span.leakageOhmKm) * (span.lengthM / 1000);
  return fromV * sinhRatio(1 - share, theta) + toV * sinhRatio(share, theta);
}

/** sinh(share theta) / sinh(theta) for share in 0..1, without overflow at any theta; `share` itself at theta 0. */
function sinhRatio(share: number, theta: number): number {
  if (theta < 1e-8) return share;
  return (Math.exp((share - 1) * theta) * Math.expm1(-2 * share * theta)) / Math.expm1(-2 * theta);
}
