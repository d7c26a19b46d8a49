import Flatbush from 'flatbush';
import type { Xy } from '../types.ts';

/**
 * How often some lines cross themselves and one another, counted no further than to `most` (and what is found with the
 * last one): that many are too many, whatever the number. Ends that touch are no crossings.
 */
export function countCrossings(lines: readonly (readonly Xy[])[], most: number): number {
  const segments = lines.reduce((sum, { length }) => sum + Math.max(0, length - 1), 0);
  if (segments < 2) return 0;
  const ends = new Float64Array(4 * segments);
  const tree = new Flatbush(segments);
  let filled = 0;
  for (const line of lines) {
    for (let i = 1; i < line.length; i++) {
      const [[ax, ay], [bx, by]] = [line[i - 1]!, line[i]!];
      ends.set([ax, ay, bx, by], 4 * filled++);
      tree.add(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
    }
  }
  tree.finish();
  let found = 0;
  for (let i = 0; i < segments && found <= most; i++) {
    const [ax, ay, bx, by] = ends.subarray(4 * i, 4 * i + 4) as unknown as [number, number, number, number];
    tree.search(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by), (j) => {
      if (j > i && found <= most && crosses(ends, i, j)) found++;
      return false;
    });
  }
  return found;
}

/** Whether two segments go through each other. */
function crosses(ends: Float64Array, i: number, j: number): boolean {
  const side = (of: number, end: number) => {
    const [ax, ay, bx, by] = [ends[4 * of]!, ends[4 * of + 1]!, ends[4 * of + 2]!, ends[4 * of + 3]!];
    return (bx - ax) * (ends[end + 1]! - ay) - (by - ay) * (ends[end]! - ax);
  };
  return side(i, 4 * j) * side(i, 4 * j + 2) < 0 && side(j, 4 * i) * side(j, 4 * i + 2) < 0;
}
