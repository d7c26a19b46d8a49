import { foldingOrder } from './foldingOrder.ts';

/**
 * Where everything goes when the nodes of one topology are eliminated, whatever the figures on the branches.
 * Nodes are renumbered by `positionOf`: 0 is eliminated first, `nodeCount - 1` is the source's node, never
 * eliminated. "Column j" is position j with the later positions it is joined to when its turn comes.
 */
export interface FactorPlan {
  readonly nodeCount: number;
  readonly positionOf: Int32Array;
  /** Column j's entries are `colStart[j] .. colStart[j + 1] - 1`; `rowOf` gives the later position, ascending. */
  readonly colStart: Int32Array;
  readonly rowOf: Int32Array;
  /** The entries whose row is j, `rowEntry[rowStart[j]] ..`, by ascending column `rowColumn`: who was eliminated into j. */
  readonly rowStart: Int32Array;
  readonly rowEntry: Int32Array;
  readonly rowColumn: Int32Array;
  /** The circuit's own branches by the column they start in: `slotStart[j] ..`, each with its other end. */
  readonly slotStart: Int32Array;
  readonly slotRow: Int32Array;
  /** Per branch, its slot; -1 for a branch from a node to itself. */
  readonly slotOf: Int32Array;
}

export function factorPlan(nodeCount: number, from: Int32Array, to: Int32Array, sourceNode: number): FactorPlan {
  const { order, start, neighbours } = foldingOrder(nodeCount, from, to, sourceNode);
  const positionOf = new Int32Array(nodeCount);
  for (let j = 0; j < nodeCount - 1; j++) positionOf[order[j]!] = j;
  positionOf[sourceNode] = nodeCount - 1;

  // Sorted by row, then dealt back to the columns: each column comes out ascending without a comparison.
  const entryCount = neighbours.length;
  const rowStart = new Int32Array(nodeCount + 1);
  for (let t = 0; t < entryCount; t++) {
    const row = positionOf[neighbours[t]!]!;
    neighbours[t] = row;
    rowStart[row + 1]!++;
  }
  for (let j = 0; j < nodeCount; j++) rowStart[j + 1]! += rowStart[j]!;
  const rowFill = rowStart.slice(0, nodeCount);
  const rowColumn = new Int32Array(entryCount);
  for (let j = 0; j < nodeCount - 1; j++) {
    for (let t = start[j]!; t < start[j + 1]!; t++) rowColumn[rowFill[neighbours[t]!]!++] = j;
  }
  const colStart = new Int32Array(nodeCount + 1);
  colStart.set(start);
  colStart[nodeCount] = entryCount;
  const colFill = start.slice();
  const rowOf = new Int32Array(entryCount);
  const rowEntry = new Int32Array(entryCount);
  for (let row = 0; row < nodeCount; row++) {
    for (let q = rowStart[row]!; q < rowStart[row + 1]!; q++) {
      const t = colFill[rowColumn[q]!]!++;
      rowOf[t] = row;
      rowEntry[q] = t;
    }
  }
  return {
    nodeCount,
    positionOf,
    colStart,
    rowOf,
    rowStart,
    rowEntry,
    rowColumn,
    ...branchSlots(positionOf, from, to),
  };
}

/** The branches sorted by the column they start in. */
function branchSlots(positionOf: Int32Array, from: Int32Array, to: Int32Array) {
  const nodeCount = positionOf.length;
  const branchCount = from.length;
  const slotStart = new Int32Array(nodeCount + 1);
  const slotOf = new Int32Array(branchCount);
  for (let b = 0; b < branchCount; b++) {
    const u = positionOf[from[b]!]!;
    const v = positionOf[to[b]!]!;
    if (u === v) slotOf[b] = -1;
    else slotStart[Math.min(u, v) + 1]!++;
  }
  for (let j = 0; j < nodeCount; j++) slotStart[j + 1]! += slotStart[j]!;
  const fill = slotStart.slice(0, nodeCount);
  const slotRow = new Int32Array(slotStart[nodeCount]!);
  for (let b = 0; b < branchCount; b++) {
    if (slotOf[b]! < 0) continue;
    const u = positionOf[from[b]!]!;
    const v = positionOf[to[b]!]!;
    const slot = fill[Math.min(u, v)]!++;
    slotOf[b] = slot;
    slotRow[slot] = Math.max(u, v);
  }
  return { slotStart, slotRow, slotOf };
}
