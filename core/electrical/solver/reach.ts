import type { FenceCircuit } from '../circuit/circuit.ts';
import type { Branches } from './branches.ts';

/** By node: 1 where a conducting path leads to the source, 0 where none does, when `isClosed` says so of each link. */
export type Reach = (isClosed: (link: number) => boolean) => Uint8Array;

/**
 * Which nodes the source reaches. Not read off the voltages, since 0 V can also mean a dead short. Runs always conduct,
 * so nodes are gathered once into the pieces that stay joined with every link open; each question is then put to the
 * links alone.
 */
export function reachOf(circuit: FenceCircuit, branches: Branches): Reach {
  const { nodeCount, source } = circuit;
  const { spanCount, from, to } = branches;
  const { pieceOf, pieceCount } = piecesOf(nodeCount, from, to, spanCount);
  const linkCount = from.length - spanCount;
  const fromPiece = new Int32Array(linkCount);
  const toPiece = new Int32Array(linkCount);
  for (let link = 0; link < linkCount; link++) {
    fromPiece[link] = pieceOf[from[spanCount + link]!]!;
    toPiece[link] = pieceOf[to[spanCount + link]!]!;
  }
  return (isClosed) => {
    const parent = everyoneAlone(pieceCount);
    for (let link = 0; link < linkCount; link++) if (isClosed(link)) join(parent, fromPiece[link]!, toPiece[link]!);
    const sourcePiece = leader(parent, pieceOf[source.node]!);
    const reachedPiece = new Uint8Array(pieceCount);
    for (let piece = 0; piece < pieceCount; piece++) if (leader(parent, piece) === sourcePiece) reachedPiece[piece] = 1;
    const reached = new Uint8Array(nodeCount);
    for (let v = 0; v < nodeCount; v++) reached[v] = reachedPiece[pieceOf[v]!]!;
    return reached;
  };
}

/** Numbers the groups of nodes that the first `branchCount` branches join. */
function piecesOf(nodeCount: number, from: Int32Array, to: Int32Array, branchCount: number) {
  const parent = everyoneAlone(nodeCount);
  for (let b = 0; b < branchCount; b++) join(parent, from[b]!, to[b]!);
  // Each leader is the lowest number of its group, so it has its piece before any other member asks.
  const pieceOf = new Int32Array(nodeCount);
  let pieceCount = 0;
  for (let v = 0; v < nodeCount; v++) {
    const first = leader(parent, v);
    pieceOf[v] = first === v ? pieceCount++ : pieceOf[first]!;
  }
  return { pieceOf, pieceCount };
}

function everyoneAlone(count: number): Int32Array {
  const parent = new Int32Array(count);
  for (let v = 0; v < count; v++) parent[v] = v;
  return parent;
}

function leader(parent: Int32Array, v: number): number {
  let at = v;
  while (parent[at] !== at) {
    const up = parent[parent[at]!]!;
    parent[at] = up;
    at = up;
  }
  return at;
}

function join(parent: Int32Array, u: number, v: number): void {
  const a = leader(parent, u);
  const b = leader(parent, v);
  if (a < b) parent[b] = a;
  else parent[a] = b;
}
