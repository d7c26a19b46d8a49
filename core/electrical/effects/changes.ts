import type { FenceCircuit } from '../circuit/circuit.ts';
import { energiserInternalOhm } from '../energiser/internalOhm.ts';
import type { CircuitChange } from './circuitChange.ts';

/** `toWires` live wires joined in parallel where there are `fromWires`: less resistance, and as much more to leak. */
export function moreLiveWires(
  circuit: FenceCircuit,
  spans: readonly number[],
  fromWires: number,
  toWires: number,
): CircuitChange {
  const ratio = fromWires / toWires;
  return {
    spans: spans.map((span) => {
      const { ohmPerKm, leakageOhmKm } = circuit.spans[span]!;
      return { span, ohmPerKm: ohmPerKm * ratio, leakageOhmKm: leakageOhmKm * ratio };
    }),
  };
}

/** Another conductor in some runs, such as a heavier lead-out. */
export function otherConductor(spans: readonly number[], ohmPerKm: number): CircuitChange {
  return { spans: spans.map((span) => ({ span, ohmPerKm })) };
}

/** Growth cut back so that the runs leak `share` of what they do now (0.1: a tenth; 0: not at all). */
export function lessGrowth(circuit: FenceCircuit, spans: readonly number[], share: number): CircuitChange {
  return {
    spans: spans.map((span) => ({ span, leakageOhmKm: circuit.spans[span]!.leakageOhmKm / share })),
  };
}

/** Another energiser by its label, on the same earth field. */
export function otherEnergiser(
  label: { readonly openCircuitV: number; readonly into500OhmV: number },
  earthOhm: number,
): CircuitChange {
  const { openCircuitV, into500OhmV } = label;
  return { source: { openCircuitV, internalOhm: energiserInternalOhm(openCircuitV, into500OhmV) + earthOhm } };
}

/** The earth field brought down from `fromOhm`, which the source's resistance includes now, to `toOhm`. */
export function betterEarth(circuit: FenceCircuit, fromOhm: number, toOhm: number): CircuitChange {
  return { source: { internalOhm: Math.max(0, circuit.source.internalOhm - fromOhm + toOhm) } };
}
