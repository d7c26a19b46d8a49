import { minimumDegreeOrder } from './minimumDegreeOrder.ts';

/**
 * In which order to eliminate the nodes, and which nodes each is still joined to when its turn comes.
 * `order` holds every node but the root, first to go first; the neighbours of `order[k]` are
 * `neighbours[start[k]] .. neighbours[start[k + 1] - 1]`, as node numbers in no particular order.
 */
export interface FoldingOrder {
  readonly order: Int32Array;
  readonly start: Int32Array;
  readonly neighbours: Int32Array;
}

/**
 * Leaves fold into their neighbour until only rings and what joins them are left (no fill at all); those go by
 * minimum degree, which takes chains first and leaves the few true junctions to last. Linear on trees.
 *
 * The one neighbour of a leaf is found without a list: each node keeps the exclusive or of all its neighbours'
 * numbers, and whoever folds away strikes himself out of it.
 */
export function foldingOrder(nodeCount: number, from: Int32Array, to: Int32Array, root: number): FoldingOrder {
  const branchCount = from.length;
  const degree = new Int32Array(nodeCount);
  const neighbourXor = new Int32Array(nodeCount);
  for (let b = 0; b < branchCount; b++) {
    const u = from[b]!;
    const v = to[b]!;
    if (u === v) continue;
    degree[u]!++;
    degree[v]!++;
    neighbourXor[u]! ^= v;
    neighbourXor[v]! ^= u;
  }

  const order = new Int32Array(nodeCount - 1);
  const start = new Int32Array(nodeCount);
  const leafNeighbour = new Int32Array(nodeCount);
  const gone = new Uint8Array(nodeCount);
  let count = 0;
  let size = 0;
  for (let first = 0; first < nodeCount; first++) {
    let leaf = first;
    while (leaf !== root && degree[leaf]! <= 1 && gone[leaf] === 0) {
      gone[leaf] = 1;
      start[count] = size;
      order[count++] = leaf;
      if (degree[leaf] === 0) break;
      const next = neighbourXor[leaf]!;
      leafNeighbour[size++] = next;
      degree[next]!--;
      neighbourXor[next]! ^= leaf;
      leaf = next;
    }
  }
  start[count] = size;
  if (count === nodeCount - 1) return { order, start, neighbours: leafNeighbour.subarray(0, size) };

  const core = minimumDegreeOrder(nodeCount, from, to, gone, root);
  const neighbours = new Int32Array(size + core.neighbours.length);
  neighbours.set(leafNeighbour.subarray(0, size));
  neighbours.set(core.neighbours, size);
  order.set(core.order, count);
  for (let k = 0; k < core.order.length; k++) start[count + k + 1] = size + core.start[k + 1]!;
  return { order, start, neighbours };
}
