import type { FenceCircuit } from '../circuit/circuit.ts';

/** One thing that could be done to a fence, as the figures it changes. */
export interface CircuitChange {
  readonly spans?: readonly { readonly span: number; readonly ohmPerKm?: number; readonly leakageOhmKm?: number }[];
  readonly links?: readonly { readonly link: number; readonly open?: boolean; readonly ohm?: number }[];
  readonly source?: { readonly openCircuitV?: number; readonly internalOhm?: number };
}

/** The circuit with the change made; the topology stays as it is. */
export function withChange(circuit: FenceCircuit, change: CircuitChange): FenceCircuit {
  const spans = [...circuit.spans];
  for (const { span, ...figures } of change.spans ?? []) spans[span] = { ...spans[span]!, ...figures };
  const links = [...circuit.links];
  for (const { link, ...figures } of change.links ?? []) links[link] = { ...links[link]!, ...figures };
  return { ...circuit, spans, links, source: { ...circuit.source, ...change.source } };
}
