import type { FenceCircuit } from '../../core/electrical/circuit/circuit.ts';

/**
 * Node voltages the plain way, as an independent check on the sparse solver: nodal analysis with an unknown current for
 * every perfect joint (modified nodal analysis), hyperbolic functions written as in the textbook, Gaussian elimination
 * with partial pivoting on the full matrix. Nodes without a path to the source are tied to 0 V.
 */
export function denseVoltage(circuit: FenceCircuit): number[] {
  const { nodeCount, spans, links, faults, source } = circuit;
  const joints: [number, number][] = [];
  const shorts: number[] = [];
  const edges: [number, number][] = [];
  const y = Array.from({ length: nodeCount }, () => Array.from({ length: nodeCount }, () => 0));
  const rhs = Array.from({ length: nodeCount }, () => 0);
  const join = (u: number, v: number, ohm: number): void => {
    edges.push([u, v]);
    if (u === v) return;
    if (ohm === 0) joints.push([u, v]);
    else {
      y[u]![u]! += 1 / ohm;
      y[v]![v]! += 1 / ohm;
      y[u]![v]! -= 1 / ohm;
      y[v]![u]! -= 1 / ohm;
    }
  };
  for (const { from, to, lengthM, ohmPerKm, leakageOhmKm } of spans) {
    const km = lengthM / 1000;
    const theta = Math.sqrt(ohmPerKm / leakageOhmKm) * km;
    const lineOhm = Math.sqrt(ohmPerKm * leakageOhmKm);
    join(from, to, theta === 0 ? ohmPerKm * km : lineOhm * Math.sinh(theta));
    const shunt = theta === 0 ? km / leakageOhmKm / 2 : Math.tanh(theta / 2) / lineOhm;
    y[from]![from]! += shunt;
    y[to]![to]! += shunt;
  }
  for (const { from, to, ohm, open } of links) if (!open) join(from, to, ohm);
  for (const { node, ohm } of faults) {
    if (ohm === 0) shorts.push(node);
    else y[node]![node]! += 1 / ohm;
  }
  y[source.node]![source.node]! += 1 / source.internalOhm;
  rhs[source.node]! += source.openCircuitV / source.internalOhm;

  const reached = reachedBy(nodeCount, edges, source.node);
  const unknowns = independentJoints(nodeCount, joints, shorts);
  const size = nodeCount + unknowns.length;
  const a = y.map((row) => [...row, ...Array.from({ length: unknowns.length }, () => 0)]);
  const b = [...rhs];
  unknowns.forEach(([u, v], i) => {
    const row = Array.from({ length: size }, () => 0);
    row[u] = 1;
    a[u]![nodeCount + i] = 1;
    if (v >= 0) {
      row[v] = -1;
      a[v]![nodeCount + i] = -1;
    }
    a.push(row);
    b.push(0);
  });
  for (let v = 0; v < nodeCount; v++) if (!reached[v]) a[v]![v]! += 1;
  return solveDense(a, b)
    .slice(0, nodeCount)
    .map((volts, v) => (reached[v] ? volts : 0));
}

/** Solves a x = b by Gaussian elimination with partial pivoting; overwrites both. */
export function solveDense(a: number[][], b: number[]): number[] {
  const n = b.length;
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i]![k]!) > Math.abs(a[pivot]![k]!)) pivot = i;
    [a[k], a[pivot]] = [a[pivot]!, a[k]!];
    [b[k], b[pivot]] = [b[pivot]!, b[k]!];
    for (let i = k + 1; i < n; i++) {
      const f = a[i]![k]! / a[k]![k]!;
      if (f === 0) continue;
      for (let j = k; j < n; j++) a[i]![j]! -= f * a[k]![j]!;
      b[i]! -= f * b[k]!;
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    for (let j = k + 1; j < n; j++) b[k]! -= a[k]![j]! * b[j]!;
    b[k]! /= a[k]![k]!;
  }
  return b;
}

function reachedBy(nodeCount: number, edges: readonly [number, number][], source: number): boolean[] {
  const reached = Array.from({ length: nodeCount }, () => false);
  reached[source] = true;
  for (let changed = true; changed; ) {
    changed = false;
    for (const [u, v] of edges) {
      if (reached[u] === reached[v]) continue;
      reached[u] = true;
      reached[v] = true;
      changed = true;
    }
  }
  return reached;
}

/** Perfect joints and dead shorts (the other end then -1, earth) that are not implied by those before them. */
function independentJoints(
  nodeCount: number,
  joints: readonly [number, number][],
  shorts: readonly number[],
): [number, number][] {
  const group = Array.from({ length: nodeCount + 1 }, (_, v) => v);
  const kept: [number, number][] = [];
  for (const [u, v] of [...shorts.map((node): [number, number] => [node, -1]), ...joints]) {
    const a = group[u]!;
    const b = group[v < 0 ? nodeCount : v]!;
    if (a === b) continue;
    for (let w = 0; w <= nodeCount; w++) if (group[w] === a) group[w] = b;
    kept.push([u, v]);
  }
  return kept;
}
