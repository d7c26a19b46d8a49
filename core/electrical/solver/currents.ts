import type { FenceCircuit } from '../circuit/circuit.ts';
import { siemens } from '../circuit/siemens.ts';
import type { Branches } from './branches.ts';
import { settlePerfectJoints } from './perfectJoints.ts';

/** Amperes at the pulse's peak. */
export interface Currents {
  /** Per span, into it at its `from` end and at its `to` end; their sum is what it leaks. */
  readonly spanFromA: Float64Array;
  readonly spanToA: Float64Array;
  /** Per link, from `from` to `to`. Round a loop of perfect joints alone the share of each is not determined: one of them reads 0. */
  readonly linkA: Float64Array;
  /** Per fault, into the ground; dead shorts joined perfectly to each other share equally, which is a choice. */
  readonly faultA: Float64Array;
  /** The most that any node's currents fail to add up to 0: rounding, if all is well. */
  readonly imbalanceA: number;
}

/** Currents from node voltages. What flows through perfect joints and dead shorts is what the nodes they join have over. */
export function currentsAt(
  circuit: FenceCircuit,
  branches: Branches,
  nodeVoltageV: Float64Array,
  sourceCurrentA: number,
): Currents {
  const { nodeCount, links, faults, source } = circuit;
  const { spanCount, from, to, seriesS, spanShuntS } = branches;
  const spanFromA = new Float64Array(spanCount);
  const spanToA = new Float64Array(spanCount);
  const linkA = new Float64Array(links.length);
  const faultA = new Float64Array(faults.length);
  const leavingA = new Float64Array(nodeCount);
  const perfectBranches: number[] = [];
  const deadShorts: number[] = [];
  leavingA[source.node]! -= sourceCurrentA;

  for (let b = 0; b < spanCount; b++) {
    const u = from[b]!;
    const v = to[b]!;
    const s = seriesS[b]!;
    const along = s < Infinity ? s * (nodeVoltageV[u]! - nodeVoltageV[v]!) : 0;
    if (s === Infinity && u !== v) perfectBranches.push(b);
    spanFromA[b] = along + spanShuntS[b]! * nodeVoltageV[u]!;
    spanToA[b] = spanShuntS[b]! * nodeVoltageV[v]! - along;
    leavingA[u]! += spanFromA[b]!;
    leavingA[v]! += spanToA[b]!;
  }
  for (let i = 0; i < links.length; i++) {
    const b = spanCount + i;
    const u = from[b]!;
    const v = to[b]!;
    const s = seriesS[b]!;
    if (u === v || s === 0) continue;
    if (s === Infinity) {
      perfectBranches.push(b);
      continue;
    }
    linkA[i] = s * (nodeVoltageV[u]! - nodeVoltageV[v]!);
    leavingA[u]! += linkA[i]!;
    leavingA[v]! -= linkA[i]!;
  }
  for (let i = 0; i < faults.length; i++) {
    const { node, ohm } = faults[i]!;
    if (siemens(ohm) === Infinity) deadShorts.push(i);
    else {
      faultA[i] = nodeVoltageV[node]! / ohm;
      leavingA[node]! += faultA[i]!;
    }
  }
  if (perfectBranches.length > 0 || deadShorts.length > 0) {
    settlePerfectJoints({
      circuit,
      branches,
      perfectBranches,
      deadShorts,
      leavingA,
      spanFromA,
      spanToA,
      linkA,
      faultA,
    });
  }
  let imbalanceA = 0;
  for (let v = 0; v < nodeCount; v++) imbalanceA = Math.max(imbalanceA, Math.abs(leavingA[v]!));
  return { spanFromA, spanToA, linkA, faultA, imbalanceA };
}
