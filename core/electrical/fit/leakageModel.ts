import type { FenceCircuit } from '../circuit/circuit.ts';
import { spanLeakageSlope } from '../circuit/spanLeakageSlope.ts';
import type { PreparedVoltage } from '../preparedVoltage.ts';

/** A group of runs whose leakage is one unknown: `times` multiplies the leakage conductance that the circuit gives them. */
export interface LeakageSection {
  readonly name: string;
  readonly spans: readonly number[];
}

/** The circuit with each section's leakage multiplied. */
export function withLeakage(
  circuit: FenceCircuit,
  sections: readonly LeakageSection[],
  times: readonly number[],
): FenceCircuit {
  const spans = [...circuit.spans];
  sections.forEach((section, s) => {
    for (const i of section.spans) {
      const span = circuit.spans[i]!;
      spans[i] = { ...span, leakageOhmKm: span.leakageOhmKm / times[s]! };
    }
  });
  return { ...circuit, spans };
}

/**
 * How the voltage at `node` answers to the logarithm of each section's leakage (V), by the adjoint method: one response
 * of the eliminated network gives the slopes to all sections at once. With lambda that response and V the voltages,
 * dV(node)/dG = -lambda' (dY/dG) V, Y the nodal matrix.
 */
export function leakageSlopes(
  prepared: PreparedVoltage,
  nodeVoltageV: Float64Array,
  node: number,
  sections: readonly LeakageSection[],
): number[] {
  const response = prepared.responseTo(node);
  const { spans } = prepared.circuit;
  return sections.map((section) => {
    let slope = 0;
    for (const i of section.spans) {
      const span = spans[i]!;
      const leakS = span.lengthM / 1000 / span.leakageOhmKm;
      if (leakS === 0) continue;
      const { series, shunt } = spanLeakageSlope(span);
      const { from, to } = span;
      const ends = response[from]! * nodeVoltageV[from]! + response[to]! * nodeVoltageV[to]!;
      const across = (response[from]! - response[to]!) * (nodeVoltageV[from]! - nodeVoltageV[to]!);
      slope -= leakS * (shunt * ends + series * across);
    }
    return slope;
  });
}
