import type { Steps } from '../../model/steps.ts';
import type { CutGraph } from './contract.ts';
import { Heap } from './heap.ts';
import type { Work } from './work.ts';

/** What taking one from the queue counts towards the next pause; nothing is charged for it. */
const STEPS_A_MERGE = 20;

/**
 * A first plan for a graph of any shape: every vertex starts as a section of its own, and the two neighbouring sections
 * whose joining saves most for what they would amount to together are joined, again and again, while the limits allow.
 * Returns the edges cut.
 */
export function* greedyMerge(graph: CutGraph, work: Work): Steps<Uint8Array> {
  const { vertexCount, edgeA, edgeB, edgeCost, mustCut } = graph;
  const kinds = graph.limits.length;
  const amounts = graph.weights.slice();
  const exempt = graph.exempt.slice();
  const partOf = Int32Array.from({ length: vertexCount }, (_, v) => v);
  const between: Map<number, number>[] = Array.from({ length: vertexCount }, () => new Map<number, number>());
  for (let e = 0; e < edgeA.length; e++) {
    const saved = mustCut[e] ? Number.NEGATIVE_INFINITY : edgeCost[e]!;
    addTo(between[edgeA[e]!]!, edgeB[e]!, saved);
    addTo(between[edgeB[e]!]!, edgeA[e]!, saved);
  }
  const queue = new Heap<Merge>((x, y) => x[2] > y[2]);
  for (let v = 0; v < vertexCount; v++) for (const w of between[v]!.keys()) if (v < w) offer(v, w);
  for (let next = queue.take(); next; next = queue.take()) {
    if (work.isPauseDue(STEPS_A_MERGE)) yield;
    const [a, b, rating] = next;
    if (partOf[a] === a && partOf[b] === b && rating === rate(a, b)) join(a, b);
  }
  for (let v = 0; v < vertexCount; v++) partOf[v] = representative(v);
  return Uint8Array.from({ length: edgeA.length }, (_, e) => (partOf[edgeA[e]!] === partOf[edgeB[e]!] ? 0 : 1));

  function representative(v: number): number {
    let part = v;
    while (partOf[part] !== part) part = partOf[part] = partOf[partOf[part]!]!;
    return part;
  }

  /** Saving per share of the limits used; negative when they may not be joined. */
  function rate(a: number, b: number): number {
    const saved = between[a]!.get(b) ?? -1;
    let used = 1e-9;
    for (let d = 0; d < kinds; d++) {
      const sum = amounts[a * kinds + d]! + amounts[b * kinds + d]!;
      // What is over a limit by itself takes in only what adds nothing.
      const single = Math.max(amounts[a * kinds + d]!, amounts[b * kinds + d]!);
      if (sum > Math.max(graph.limits[d]!, exempt[a] || exempt[b] ? single : 0)) return -1;
      used = Math.max(used, sum / Math.max(graph.limits[d]!, 1e-9));
    }
    return saved / used;
  }

  function offer(a: number, b: number): void {
    const rating = rate(a, b);
    if (rating >= 0) queue.add([a, b, rating]);
  }

  function join(a: number, b: number): void {
    const [into, from] = between[a]!.size >= between[b]!.size ? [a, b] : [b, a];
    partOf[from] = into;
    if (exempt[from]) exempt[into] = 1;
    for (let d = 0; d < kinds; d++) amounts[into * kinds + d]! += amounts[from * kinds + d]!;
    between[into]!.delete(from);
    for (const [other, saved] of between[from]!) {
      between[other]!.delete(from);
      if (other === into) continue;
      addTo(between[into]!, other, saved);
      addTo(between[other]!, into, saved);
    }
    between[from]!.clear();
    for (const other of between[into]!.keys()) offer(into, other);
  }
}

function addTo(map: Map<number, number>, key: number, value: number): void {
  map.set(key, (map.get(key) ?? 0) + value);
}

type Merge = readonly [a: number, b: number, rating: number];
