import type { Box } from './plane/box.ts';

/** Boxes that come one by one, and the question whether another overlaps any of them. */
export interface BoxGrid {
  readonly add: (box: Box) => void;
  /** True where the insides meet; a shared edge is no overlap. */
  readonly overlaps: (box: Box) => boolean;
}

/** A box over more cells than this is kept aside and looked at every time. */
const mostCells = 256;

/** A grid of square cells, each with the boxes that reach into it. Best with cells about as large as the boxes. */
export function createBoxGrid(cellSize: number): BoxGrid {
  const cells = new Map<string, Box[]>();
  const large: Box[] = [];
  const all: Box[] = [];

  /** The cells that a box reaches into; null for a large one. */
  function cellsOf([minX, minY, maxX, maxY]: Box): string[] | null {
    const [left, right] = [Math.floor(minX / cellSize), Math.floor(maxX / cellSize)];
    const [bottom, top] = [Math.floor(minY / cellSize), Math.floor(maxY / cellSize)];
    if (!((right - left + 1) * (top - bottom + 1) <= mostCells)) return null;
    const keys: string[] = [];
    for (let x = left; x <= right; x++) for (let y = bottom; y <= top; y++) keys.push(`${x} ${y}`);
    return keys;
  }

  return {
    add(box) {
      all.push(box);
      const keys = cellsOf(box);
      if (!keys) large.push(box);
      for (const key of keys ?? []) {
        const cell = cells.get(key);
        if (cell) cell.push(box);
        else cells.set(key, [box]);
      }
    },
    overlaps(box) {
      const keys = cellsOf(box);
      if (!keys) return all.some((other) => insidesMeet(box, other));
      const inCells = keys.some((key) => cells.get(key)?.some((other) => insidesMeet(box, other)));
      return inCells || large.some((other) => insidesMeet(box, other));
    },
  };
}

function insidesMeet(a: Box, b: Box): boolean {
  return a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
}
