import type { Span } from '../../electrical/circuit/circuit.ts';
import type { PlaceVoltage } from '../../electrical/effects/weakestPlace.ts';
import { type PreparedVoltage, prepareVoltage } from '../../electrical/preparedVoltage.ts';
import type { Voltages } from '../../electrical/voltageResult.ts';
import { xyDistanceM } from '../../geometry/vector.ts';
import { type Message, message } from '../../words/message.ts';
import { fencePlace } from './fencePlace.ts';
import type { Power, Supply } from './types.ts';

/** A ring closed by one more stretch of fence from the weakest place. */
export interface RingLink {
  readonly name: Message;
  readonly thingIds: readonly string[];
  readonly prepared: PreparedVoltage;
  readonly voltages: Voltages;
}

/**
 * A live link from the weakest node to the nearest one that reads at least halfway up from there to the energiser, in
 * a straight line and made like the fence at its end; null where the weakest place is not a node, or there is no other.
 */
export function ringLink(power: Power, supply: Supply, { place, volts }: PlaceVoltage): RingLink | null {
  const { project, survey } = power;
  const { asIs } = supply.prepared;
  if (!asIs.ok || place.on !== 'node') return null;
  const { nodes } = survey.network;
  const halfwayV = (volts + asIs.sourceVoltageV) / 2;
  const like = supply.circuit.spans.find(({ from, to }) => from === place.node || to === place.node);
  if (!like || !(halfwayV > volts)) return null;
  const onFence = new Set(supply.circuit.spans.flatMap(({ from, to }) => [from, to]));
  let nearest: { node: number; lengthM: number } | null = null;
  for (const node of onFence) {
    if (asIs.reached[node] !== 1 || asIs.nodeVoltageV[node]! < halfwayV) continue;
    const lengthM = xyDistanceM(nodes[place.node]!.xy, nodes[node]!.xy);
    if (lengthM > 0 && (!nearest || lengthM < nearest.lengthM)) nearest = { node, lengthM };
  }
  if (!nearest) return null;
  const span: Span = { ...like, from: place.node, to: nearest.node, lengthM: nearest.lengthM };
  const prepared = prepareVoltage({ ...supply.circuit, spans: [...supply.circuit.spans, span] });
  if (!prepared.ok || !prepared.asIs.ok) return null;
  const from = fencePlace(project, survey, supply, place, volts);
  const to = fencePlace(project, survey, supply, { on: 'node', node: nearest.node }, asIs.nodeVoltageV[nearest.node]!);
  const { lengthM } = nearest;
  return {
    name: message('power.improvements.ring', { lengthM, from: from.spot, to: to.spot }),
    thingIds: [from.thingId, to.thingId].flatMap((id) => id ?? []),
    prepared,
    voltages: prepared.asIs,
  };
}
