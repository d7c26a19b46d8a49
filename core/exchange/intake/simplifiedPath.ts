import { createLocalPlane } from '../../geometry/localPlane.ts';
import { keptVertices } from '../../geometry/simplify.ts';
import type { LonLat, Xy } from '../../geometry/types.ts';

/** The last paths that were laid out in a plane, as a tolerance that is being tried asks for the same ones again. */
const laidOut = new WeakMap<readonly LonLat[], { readonly origin: LonLat; readonly xy: readonly Xy[] }>();

/** A path without the vertices that lie within `toleranceM` of what is left; the ends stay. 0: the path itself. */
export function simplifiedPath(path: readonly LonLat[], toleranceM: number, origin: LonLat): readonly LonLat[] {
  if (!(toleranceM > 0) || path.length < 3) return path;
  let known = laidOut.get(path);
  if (known?.origin !== origin) {
    known = { origin, xy: path.map(createLocalPlane(origin).toXy) };
    laidOut.set(path, known);
  }
  return keptVertices(known.xy, toleranceM).map((index) => path[index]!);
}
