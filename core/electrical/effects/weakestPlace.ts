import type { FenceCircuit } from '../circuit/circuit.ts';
import { lowestInSpan } from '../lowestInSpan.ts';
import { voltageAlongSpan } from '../voltageAlongSpan.ts';
import type { Voltages } from '../voltageResult.ts';

/** A node, or a place inside a run by its distance from the run's `from` end. */
export type CircuitPlace =
  | { readonly on: 'node'; readonly node: number }
  | { readonly on: 'span'; readonly span: number; readonly distanceM: number };

export interface PlaceVoltage {
  readonly place: CircuitPlace;
  readonly volts: number;
}

/** Inside a run it must be lower than at any node by more than rounding. */
export const CLEARLY_LOWER = 1 - 1e-9;

/**
 * The reached place that reads least: a node (the lowest number among equals), or the inside of a run that is fed from
 * both ends. `null` where nothing is reached.
 */
export function weakestPlace(circuit: FenceCircuit, { nodeVoltageV, reached }: Voltages): PlaceVoltage | null {
  let weakest: PlaceVoltage | null = null;
  let volts = Infinity;
  for (let node = 0; node < nodeVoltageV.length; node++) {
    if (reached[node] !== 1 || nodeVoltageV[node]! >= volts) continue;
    volts = nodeVoltageV[node]!;
    weakest = { place: { on: 'node', node }, volts };
  }
  for (let i = 0; i < circuit.spans.length; i++) {
    const span = circuit.spans[i]!;
    if (reached[span.from] !== 1) continue;
    const lowest = lowestInSpan(span, nodeVoltageV[span.from]!, nodeVoltageV[span.to]!);
    if (lowest === null || lowest.volts >= volts * CLEARLY_LOWER) continue;
    volts = lowest.volts;
    weakest = { place: { on: 'span', span: i, distanceM: lowest.distanceM }, volts };
  }
  return weakest;
}

/** Volts at any place of a solved circuit. */
export function voltageAt(circuit: FenceCircuit, { nodeVoltageV }: Voltages, place: CircuitPlace): number {
  if (place.on === 'node') return nodeVoltageV[place.node]!;
  const span = circuit.spans[place.span]!;
  return voltageAlongSpan(span, nodeVoltageV[span.from]!, nodeVoltageV[span.to]!, place.distanceM);
}
