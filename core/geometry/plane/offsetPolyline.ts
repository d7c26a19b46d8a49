import type { Xy } from '../types.ts';
import { add, cross, dot, scale, subtract, turnLeft, unit } from './vector.ts';
import { xyDistanceM } from './xyDistance.ts';

/** Sharper corners than this many offsets from the vertex are cut square. */
const mitreLimit = 4;

/**
 * A path beside a path: `offsetM` metres to its left (negative: to its right), with mitred corners, those sharper
 * than the mitre limit cut square. Doubled vertices are dropped. Where the path bends tighter than the offset the
 * result loops over itself: good for drawing a line beside a line, not as a buffer.
 */
export function offsetPolyline(path: readonly Xy[], offsetM: number): Xy[] {
  const vertices = path.filter((vertex, i) => i === 0 || xyDistanceM(path[i - 1]!, vertex) > 0);
  const normals = vertices.slice(1).map((end, i) => turnLeft(unit(subtract(end, vertices[i]!))));
  return vertices.flatMap((vertex, i) => {
    const before = normals[i - 1] ?? normals[i];
    const after = normals[i] ?? before;
    if (!before || !after) return [];
    return corner(before, after, offsetM).map((shift) => add(vertex, shift));
  });
}

/** From a vertex to its offset corner: one shift, or two where the corner is cut. */
function corner(before: Xy, after: Xy, offsetM: number): Xy[] {
  const cosine = dot(before, after);
  if (cosine > 1 - 1e-12) return [scale(after, offsetM)];
  // A mitre reaches sqrt(2 / (1 + cos turn)) offsets from the vertex.
  if (1 + cosine <= 2 / mitreLimit ** 2) return squareCut(before, after, offsetM);
  return [scale(add(before, after), offsetM / (1 + cosine))];
}

/** Both offset lines run on (or stop short) by one offset, then join. On the inner side they simply stop at the vertex. */
function squareCut(before: Xy, after: Xy, offsetM: number): Xy[] {
  const outer = cross(before, after) * offsetM <= 0;
  const run = outer ? Math.abs(offsetM) : 0;
  const onward: Xy = scale(turnLeft(before), -run);
  const back: Xy = scale(turnLeft(after), run);
  return [add(scale(before, offsetM), onward), add(scale(after, offsetM), back)];
}
