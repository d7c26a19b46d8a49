import type { PreparedVoltage } from '../preparedVoltage.ts';
import type { VoltageRefusal, Voltages } from '../voltageResult.ts';
import { type CircuitChange, withChange } from './circuitChange.ts';
import { type NodeVoltage, weakestNode } from './weakestNode.ts';

export interface ChangeEffect {
  readonly change: CircuitChange;
  /** At the place that is weakest as things stand. */
  readonly farEndV: number;
  readonly farEndGainV: number;
  /** Weakest place with the change made, perhaps another one. */
  readonly weakest: NodeVoltage | null;
  readonly sourceVoltageV: number;
  readonly sourceCurrentA: number;
}

export interface Effects {
  readonly ok: true;
  readonly asIs: Voltages;
  /** The far end: the reached node that reads least as things stand. */
  readonly farEnd: NodeVoltage;
  /** In the order of the changes. */
  readonly effects: readonly ChangeEffect[];
}

/** What each change alone would do, most of all at the far end. `among` limits which nodes can be "weakest". */
export function effectsOf(
  prepared: PreparedVoltage,
  changes: readonly CircuitChange[],
  among?: readonly number[],
): Effects | VoltageRefusal {
  const { asIs, circuit } = prepared;
  if (!asIs.ok) return asIs;
  const farEnd = weakestNode(asIs, among) ?? { node: circuit.source.node, volts: asIs.sourceVoltageV };
  const effects: ChangeEffect[] = [];
  for (const change of changes) {
    const changed = prepared.refigured(withChange(circuit, change));
    if (!changed.ok) return changed;
    if (!changed.asIs.ok) return changed.asIs;
    const farEndV = changed.asIs.nodeVoltageV[farEnd.node]!;
    effects.push({
      change,
      farEndV,
      farEndGainV: farEndV - farEnd.volts,
      weakest: weakestNode(changed.asIs, among),
      sourceVoltageV: changed.asIs.sourceVoltageV,
      sourceCurrentA: changed.asIs.sourceCurrentA,
    });
  }
  return { ok: true, asIs, farEnd, effects };
}
