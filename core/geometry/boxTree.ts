import Flatbush from 'flatbush';
import type { Box } from './box.ts';

/** Boxes looked up by place; numbered in the order in which they were put in. */
export interface BoxTree {
  /** Those that share a point with this one and are accepted, in no order. */
  readonly search: (box: Box, accept?: (index: number) => boolean) => number[];
}

/** Takes a box in by its sides. */
export type AddBox = (west: number, south: number, east: number, north: number) => void;

const nothing: BoxTree = { search: () => [] };

/** A tree of exactly `count` boxes, which `fill` puts in. Packed once; none are put in later. */
export function boxTree(count: number, fill: (add: AddBox) => void): BoxTree {
  if (count === 0) return nothing;
  const tree = new Flatbush(count);
  fill((west, south, east, north) => {
    tree.add(west, south, east, north);
  });
  tree.finish();
  return { search: ([west, south, east, north], accept) => tree.search(west, south, east, north, accept) };
}
