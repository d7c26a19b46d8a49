import type { FenceCircuit } from './circuit/circuit.ts';
import { prepareVoltage } from './preparedVoltage.ts';
import { type Currents, currentsAt } from './solver/currents.ts';
import type { VoltageRefusal, Voltages } from './voltageResult.ts';

export type VoltageSolution = Voltages & Currents;

/**
 * The peak voltage at every node and the currents, once. Runs are exact distributed lines, not lumps; any topology.
 * An estimate of a fence pulse: it is short (well under 10 ms), and capacitance and travel time are left out.
 */
export function solveVoltage(circuit: FenceCircuit): VoltageSolution | VoltageRefusal {
  const prepared = prepareVoltage(circuit);
  if (!prepared.ok) return prepared;
  const { asIs, branches } = prepared;
  if (!asIs.ok) return asIs;
  return { ...asIs, ...currentsAt(circuit, branches, asIs.nodeVoltageV, asIs.sourceCurrentA) };
}
