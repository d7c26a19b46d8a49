import type { PaperBox } from '../displayList.ts';

interface Boxed {
  readonly box: PaperBox;
}

/** Things with boxes that come and go, and the question which lie near another box. */
export interface SeatGrid<T extends Boxed> {
  readonly add: (thing: T) => void;
  readonly remove: (thing: T) => void;
  /** Whether one of those near a box is meant; one may be asked about more than once. */
  readonly some: (box: PaperBox, isMeant: (thing: T) => boolean) => boolean;
  /** All that lie near a box, each once. */
  readonly near: (box: PaperBox) => T[];
}

/** A box over more cells than this is kept aside and looked at every time. */
const mostCells = 256;

/** Cells in a column before numbers of cells come again: two that share a number cost time, never the right answer. */
const columnCells = 2 ** 26;

/** A grid of square cells, each with what reaches into it. Best with cells about as large as the boxes. */
export function createSeatGrid<T extends Boxed>(cellSize: number): SeatGrid<T> {
  const cells = new Map<number, T[]>();
  const large = new Set<T>();
  const all = new Set<T>();

  /** Asks for each cell that a box reaches into, until one answers true; null for a large box. */
  function someCell([minX, minY, maxX, maxY]: PaperBox, ask: (cell: number) => boolean): boolean | null {
    const [left, right] = [Math.floor(minX / cellSize), Math.floor(maxX / cellSize)];
    const [top, bottom] = [Math.floor(minY / cellSize), Math.floor(maxY / cellSize)];
    if (!((right - left + 1) * (bottom - top + 1) <= mostCells)) return null;
    for (let x = left; x <= right; x++) {
      for (let y = top; y <= bottom; y++) if (ask(x * columnCells + y)) return true;
    }
    return false;
  }

  function some(box: PaperBox, isMeant: (thing: T) => boolean): boolean {
    const inCells = someCell(box, (cell) => cells.get(cell)?.some(isMeant) ?? false);
    return inCells === null ? [...all].some(isMeant) : inCells || [...large].some(isMeant);
  }

  return {
    add(thing) {
      all.add(thing);
      const inCells = someCell(thing.box, (cell) => {
        const things = cells.get(cell);
        if (things) things.push(thing);
        else cells.set(cell, [thing]);
        return false;
      });
      if (inCells === null) large.add(thing);
    },
    remove(thing) {
      all.delete(thing);
      large.delete(thing);
      someCell(thing.box, (cell) => {
        const things = cells.get(cell);
        const at = things?.indexOf(thing) ?? -1;
        if (at >= 0) things!.splice(at, 1);
        return false;
      });
    },
    some,
    near(box) {
      const found = new Set<T>();
      some(box, (thing) => {
        found.add(thing);
        return false;
      });
      return [...found];
    },
  };
}
