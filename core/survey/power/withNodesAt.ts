import type { FenceCircuit, Span } from '../../electrical/circuit/circuit.ts';
import type { CircuitPlace } from '../../electrical/effects/weakestPlace.ts';

export interface CircuitWithNodes {
  readonly circuit: FenceCircuit;
  /** Node of each place asked for. */
  readonly nodeOfPlace: readonly number[];
  /** Spans that each span of the old circuit has become. */
  readonly piecesOfSpan: readonly (readonly number[])[];
}

/** A circuit in which every place is a node: runs are cut where a place lies inside. Electrically it is the same. */
export function withNodesAt(circuit: FenceCircuit, places: readonly CircuitPlace[]): CircuitWithNodes {
  let { nodeCount } = circuit;
  const spans: Span[] = [];
  const nodeOfPlace = places.map((place) => (place.on === 'node' ? place.node : -1));
  const cuts = new Map<number, { readonly index: number; readonly distanceM: number }[]>();
  for (const [index, place] of places.entries()) {
    if (place.on !== 'span') continue;
    const known = cuts.get(place.span);
    if (known) known.push({ index, distanceM: place.distanceM });
    else cuts.set(place.span, [{ index, distanceM: place.distanceM }]);
  }
  const piecesOfSpan = circuit.spans.map((span, i) => {
    const pieces: number[] = [];
    let from = span.from;
    let fromM = 0;
    for (const { index, distanceM } of (cuts.get(i) ?? []).sort((a, b) => a.distanceM - b.distanceM)) {
      const node = nodeCount++;
      nodeOfPlace[index] = node;
      pieces.push(spans.push({ ...span, from, to: node, lengthM: distanceM - fromM }) - 1);
      from = node;
      fromM = distanceM;
    }
    pieces.push(spans.push({ ...span, from, lengthM: span.lengthM - fromM }) - 1);
    return pieces;
  });
  return { circuit: { ...circuit, nodeCount, spans }, nodeOfPlace, piecesOfSpan };
}
