import type { FenceCircuit } from '../circuit/circuit.ts';
import type { Branches } from './branches.ts';

interface Unsettled {
  readonly circuit: FenceCircuit;
  readonly branches: Branches;
  /** Branches without resistance, not from a node to itself. */
  readonly perfectBranches: readonly number[];
  /** Faults without resistance, by index. */
  readonly deadShorts: readonly number[];
  /** Per node: what leaves it by everything else. */
  readonly leavingA: Float64Array;
  readonly spanFromA: Float64Array;
  readonly spanToA: Float64Array;
  readonly linkA: Float64Array;
  readonly faultA: Float64Array;
}

/**
 * Gives perfect joints and dead shorts the currents that balance their nodes. Nodes joined perfectly form a cluster;
 * along a tree that spans it, each joint carries what the part beyond it has over, and what the whole cluster has over
 * goes into its dead shorts. Updates every array in place.
 */
export function settlePerfectJoints(state: Unsettled): void {
  const { circuit, branches, perfectBranches, deadShorts, leavingA, faultA } = state;
  const { from, to } = branches;

  // For each node, its perfect branches as a linked list: entry 2p leads from branch p's `from`, 2p + 1 from its `to`.
  const firstEntry = new Int32Array(circuit.nodeCount).fill(-1);
  const nextEntry = new Int32Array(2 * perfectBranches.length);
  for (let p = 0; p < perfectBranches.length; p++) {
    const b = perfectBranches[p]!;
    nextEntry[2 * p] = firstEntry[from[b]!]!;
    firstEntry[from[b]!] = 2 * p;
    nextEntry[2 * p + 1] = firstEntry[to[b]!]!;
    firstEntry[to[b]!] = 2 * p + 1;
  }
  const shortsAt = new Map<number, number[]>();
  for (const f of deadShorts) {
    const node = circuit.faults[f]!.node;
    const there = shortsAt.get(node);
    if (there === undefined) shortsAt.set(node, [f]);
    else there.push(f);
  }

  const seen = new Uint8Array(circuit.nodeCount);
  const cluster: number[] = [];
  const enteredBy: number[] = [];
  const visitCluster = (first: number): void => {
    if (seen[first] === 1) return;
    seen[first] = 1;
    cluster.length = 0;
    enteredBy.length = 0;
    cluster.push(first);
    enteredBy.push(-1);
    const shorts: number[] = [];
    let over = 0;
    for (let i = 0; i < cluster.length; i++) {
      const u = cluster[i]!;
      over += leavingA[u]!;
      if (shortsAt.size > 0) for (const short of shortsAt.get(u) ?? []) shorts.push(short);
      for (let e = firstEntry[u]!; e >= 0; e = nextEntry[e]!) {
        const b = perfectBranches[e >> 1]!;
        const v = (e & 1) === 0 ? to[b]! : from[b]!;
        if (seen[v] === 1) continue;
        seen[v] = 1;
        cluster.push(v);
        enteredBy.push(e);
      }
    }
    for (const f of shorts) {
      faultA[f] = -over / shorts.length;
      leavingA[circuit.faults[f]!.node]! += faultA[f]!;
    }
    for (let i = cluster.length - 1; i > 0; i--) {
      const e = enteredBy[i]!;
      carry(state, perfectBranches[e >> 1]!, (e & 1) === 0, leavingA[cluster[i]!]!);
    }
  };
  for (const b of perfectBranches) visitCluster(from[b]!);
  for (const node of shortsAt.keys()) visitCluster(node);
}

/** Sends `ampere` through branch `b`, in its own direction if `forward`, on top of what it carries. */
function carry(state: Unsettled, b: number, forward: boolean, ampere: number): void {
  const { branches, leavingA, spanFromA, spanToA, linkA } = state;
  const along = forward ? ampere : -ampere;
  if (b < branches.spanCount) {
    spanFromA[b]! += along;
    spanToA[b]! -= along;
  } else linkA[b - branches.spanCount]! += along;
  leavingA[branches.from[b]!]! += along;
  leavingA[branches.to[b]!]! -= along;
}
