import type { PreparedVoltage } from '../preparedVoltage.ts';
import type { VoltageRefusal, Voltages } from '../voltageResult.ts';
import { type CircuitChange, withChange } from './circuitChange.ts';
import { type PlaceVoltage, voltageAt, weakestPlace } from './weakestPlace.ts';

export interface ChangeEffect {
  readonly change: CircuitChange;
  /** At the place that is weakest as things stand. */
  readonly farEndV: number;
  readonly farEndGainV: number;
  /** Weakest place with the change made, perhaps another one. */
  readonly weakest: PlaceVoltage | null;
  readonly sourceVoltageV: number;
  readonly sourceCurrentA: number;
}

export interface Effects {
  readonly ok: true;
  readonly asIs: Voltages;
  /** The far end: the reached place that reads least as things stand. */
  readonly farEnd: PlaceVoltage;
  /** In the order of the changes. */
  readonly effects: readonly ChangeEffect[];
}

/** What each change alone would do, most of all at the far end. */
export function effectsOf(prepared: PreparedVoltage, changes: readonly CircuitChange[]): Effects | VoltageRefusal {
  const { asIs, circuit } = prepared;
  if (!asIs.ok) return asIs;
  const atSource: PlaceVoltage = { place: { on: 'node', node: circuit.source.node }, volts: asIs.sourceVoltageV };
  const farEnd = weakestPlace(circuit, asIs) ?? atSource;
  const effects: ChangeEffect[] = [];
  for (const change of changes) {
    const changed = prepared.refigured(withChange(circuit, change));
    if (!changed.ok) return changed;
    if (!changed.asIs.ok) return changed.asIs;
    const farEndV = voltageAt(changed.circuit, changed.asIs, farEnd.place);
    effects.push({
      change,
      farEndV,
      farEndGainV: farEndV - farEnd.volts,
      weakest: weakestPlace(changed.circuit, changed.asIs),
      sourceVoltageV: changed.asIs.sourceVoltageV,
      sourceCurrentA: changed.asIs.sourceCurrentA,
    });
  }
  return { ok: true, asIs, farEnd, effects };
}
