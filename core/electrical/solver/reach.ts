/**
 * Which nodes have a conducting path to the source (1) and which do not (0): `conducts[b]` says whether branch b is a
 * path at all. By joined sets, since a voltage of 0 can also mean a dead short.
 */
export function reachedFrom(
  sourceNode: number,
  nodeCount: number,
  from: Int32Array,
  to: Int32Array,
  conducts: (branch: number) => boolean,
): Uint8Array {
  const parent = new Int32Array(nodeCount);
  for (let v = 0; v < nodeCount; v++) parent[v] = v;
  const leader = (v: number): number => {
    let at = v;
    while (parent[at] !== at) {
      const up = parent[parent[at]!]!;
      parent[at] = up;
      at = up;
    }
    return at;
  };
  for (let b = 0; b < from.length; b++) {
    if (!conducts(b)) continue;
    const u = leader(from[b]!);
    const v = leader(to[b]!);
    if (u < v) parent[v] = u;
    else parent[u] = v;
  }
  const reached = new Uint8Array(nodeCount);
  const source = leader(sourceNode);
  for (let v = 0; v < nodeCount; v++) if (leader(v) === source) reached[v] = 1;
  return reached;
}
