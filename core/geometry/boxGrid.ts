import type { Box } from './box.ts';

/** Boxes that come one by one, and the question whether another overlaps any of them. */
export interface BoxGrid {
  readonly add: (box: Box) => void;
  /** True where the insides meet; a shared edge is no overlap. */
  readonly overlaps: (box: Box) => boolean;
}

/** A box over more cells than this is kept aside and looked at every time. */
const mostCells = 256;

/** Cells in a column before numbers of cells come again: two that share a number cost time, never the right answer. */
const columnCells = 2 ** 26;

/** A grid of square cells, each with the boxes that reach into it. Best with cells about as large as the boxes. */
export function createBoxGrid(cellSize: number): BoxGrid {
  const cells = new Map<number, Box[]>();
  const large: Box[] = [];
  const all: Box[] = [];

  /** Asks for each cell that a box reaches into, until one answers true; null for a large box. */
  function someCell([minX, minY, maxX, maxY]: Box, ask: (cell: number) => boolean): boolean | null {
    const [left, right] = [Math.floor(minX / cellSize), Math.floor(maxX / cellSize)];
    const [bottom, top] = [Math.floor(minY / cellSize), Math.floor(maxY / cellSize)];
    if (!((right - left + 1) * (top - bottom + 1) <= mostCells)) return null;
    for (let x = left; x <= right; x++) {
      for (let y = bottom; y <= top; y++) if (ask(x * columnCells + y)) return true;
    }
    return false;
  }

  return {
    add(box) {
      all.push(box);
      const inCells = someCell(box, (cell) => {
        const boxes = cells.get(cell);
        if (boxes) boxes.push(box);
        else cells.set(cell, [box]);
        return false;
      });
      if (inCells === null) large.push(box);
    },
    overlaps(box) {
      const meets = (other: Box): boolean => insidesMeet(box, other);
      const inCells = someCell(box, (cell) => cells.get(cell)?.some(meets) ?? false);
      return inCells === null ? all.some(meets) : inCells || large.some(meets);
    },
  };
}

function insidesMeet(a: Box, b: Box): boolean {
  return a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
}
