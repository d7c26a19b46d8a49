import type { PreparedVoltage } from '../preparedVoltage.ts';
import type { Voltages } from '../voltageResult.ts';
import { type PlaceVoltage, weakestPlace } from './weakestPlace.ts';

export interface SwitchEffect {
  readonly link: number;
  /** What is done to it: a closed one is opened, an open one closed. */
  readonly action: 'open' | 'close';
  /** Nodes and metres of run that lose their way to the energiser, or (closing) gain one. */
  readonly nodes: number;
  readonly lengthM: number;
  /** Of what is reached then. */
  readonly weakest: PlaceVoltage | null;
  readonly sourceVoltageV: number;
  readonly sourceCurrentA: number;
}

/** What throwing each switch alone does, in the order asked (all links by default). One that can't be worked out is left out. */
export function switchEffects(
  prepared: PreparedVoltage,
  links: readonly number[] = prepared.circuit.links.map((_, i) => i),
): SwitchEffect[] {
  const { asIs, circuit } = prepared;
  if (!asIs.ok) return [];
  const effects: SwitchEffect[] = [];
  for (const link of links) {
    const action = circuit.links[link]?.open === true ? 'close' : 'open';
    const after = prepared.vary({ [action]: [link] });
    if (!after.ok) continue;
    const { nodes, lengthM } = reachDifference(prepared, asIs, after);
    const { sourceVoltageV, sourceCurrentA } = after;
    effects.push({
      link,
      action,
      nodes,
      lengthM,
      weakest: weakestPlace(circuit, after),
      sourceVoltageV,
      sourceCurrentA,
    });
  }
  return effects;
}

function reachDifference(prepared: PreparedVoltage, before: Voltages, after: Voltages) {
  const { circuit, branches } = prepared;
  let nodes = 0;
  for (let v = 0; v < circuit.nodeCount; v++) if (before.reached[v] !== after.reached[v]) nodes++;
  let lengthM = 0;
  if (nodes > 0) {
    for (let i = 0; i < circuit.spans.length; i++) {
      const end = branches.from[i]!;
      if (before.reached[end] !== after.reached[end]) lengthM += circuit.spans[i]!.lengthM;
    }
  }
  return { nodes, lengthM };
}
