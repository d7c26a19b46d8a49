import Flatbush from 'flatbush';

/** Boxes that are looked up together. */
const groupSize = 16;

/**
 * The pairs of boxes that come within `marginM` of each other, each pair once as `first, second` with `first < second`,
 * in no order. `boxes` holds west, south, east, north of one box after the other.
 */
export function boxPairs(boxes: Float64Array, marginM: number): number[] {
  const count = boxes.length / 4;
  if (count < 2) return [];
  const tree = new Flatbush(count);
  for (let i = 0; i < boxes.length; i += 4) tree.add(boxes[i]!, boxes[i + 1]!, boxes[i + 2]!, boxes[i + 3]!);
  tree.finish();
  // As the tree has packed them, neighbours stand together, so that one search does for a whole group.
  const packed = tree.search(-Infinity, -Infinity, Infinity, Infinity);
  const pairs: number[] = [];
  for (let start = 0; start < count; start += groupSize) {
    const group = packed.slice(start, start + groupSize);
    const near = tree.search(...boxAround(boxes, group, marginM));
    for (const first of group) {
      const west = boxes[4 * first]! - marginM;
      const south = boxes[4 * first + 1]! - marginM;
      const east = boxes[4 * first + 2]! + marginM;
      const north = boxes[4 * first + 3]! + marginM;
      for (const second of near) {
        if (second <= first || boxes[4 * second]! > east || boxes[4 * second + 2]! < west) continue;
        if (boxes[4 * second + 1]! <= north && boxes[4 * second + 3]! >= south) pairs.push(first, second);
      }
    }
  }
  return pairs;
}

function boxAround(boxes: Float64Array, group: readonly number[], marginM: number): [number, number, number, number] {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const item of group) {
    west = Math.min(west, boxes[4 * item]!);
    south = Math.min(south, boxes[4 * item + 1]!);
    east = Math.max(east, boxes[4 * item + 2]!);
    north = Math.max(north, boxes[4 * item + 3]!);
  }
  return [west - marginM, south - marginM, east + marginM, north + marginM];
}
