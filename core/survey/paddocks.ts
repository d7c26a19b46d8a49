import { type Box, boxAround } from '../geometry/box.ts';
import { boxTree } from '../geometry/boxTree.ts';
import { facesOfLines } from '../geometry/facesOfLines.ts';
import type { LocalPlane } from '../geometry/localPlane.ts';
import { cumulativeLengthsM } from '../geometry/polyline.ts';
import { interiorPoint, pointInRing } from '../geometry/ring.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import { leastOf } from '../model/extremes.ts';
import { keptFor, keptWhile } from '../model/memo.ts';
import type { PaddockName } from '../model/things.ts';
import type { LineShape } from '../shapes/types.ts';
import { isPlaceOnEarth } from '../shapes/workingPlane.ts';
import type { Paddock } from './types.ts';

/** Land that is narrower than this on the average, as between two lines drawn for the same fence, is no paddock. */
const leastWidthM = 1;

/**
 * The pieces of land that all fence lines, live or not, close in. What has the same outline as in `before` is taken
 * from there.
 */
export function paddocksOf(
  lines: ReadonlyMap<string, LineShape>,
  names: Iterable<PaddockName>,
  plane: LocalPlane,
  snapToleranceM: number,
  before: readonly Paddock[] = [],
): Paddock[] {
  const known = Map.groupBy(before, ({ ring }) => ring[0]![0]);
  const faces = facesOfLines(
    [...lines.values()].map(({ xy }) => xy),
    snapToleranceM,
  );
  const paddocks = faces.flatMap(({ shell, holes }) => {
    const ring = fromLeastVertex(shell);
    const same = known.get(ring[0]![0])?.find((old) => sameRing(old.ring, ring) && sameRings(old.holes, holes));
    if (same) return [same];
    const paddock = unnamed(ring, holes, plane);
    return meanWidthM(paddock) < leastWidthM ? [] : [paddock];
  });
  return withNames(paddocks, names, plane);
}

/** Of a strip about its width: twice its area by its boundary. */
function meanWidthM({ ring, holes, areaM2 }: Paddock): number {
  const boundaryM = [ring, ...holes].reduce((sumM, one) => sumM + cumulativeLengthsM([...one, one[0]!]).at(-1)!, 0);
  return (2 * areaM2) / boundaryM;
}

function unnamed(ring: readonly Xy[], holes: readonly (readonly Xy[])[], plane: LocalPlane): Paddock {
  const areaOf = (vertices: readonly Xy[]): number => plane.earth.ringAreaM2(vertices.map(plane.toLonLat));
  const areaM2 = holes.reduce((rest, hole) => rest - areaOf(hole), areaOf(ring));
  return { named: null, name: null, ring, holes, areaM2 };
}

/** Where a paddock's name stands: well inside of it. Looked for when it is first asked for. */
export function middleOf({ ring, holes }: Paddock): Xy {
  return middleOfRing(ring, holes);
}

const middleOfRing = keptWhile((ring: readonly Xy[], holes: readonly (readonly Xy[])[]): Xy => {
  const [minX, minY, maxX, maxY] = boxAround(ring)!;
  const sideM = Math.min(maxX - minX, maxY - minY);
  // A label need not stand at the very middle: a fiftieth of the lesser side will do, and less in a strip that lies aslant.
  for (let toleranceM = Math.max(1, sideM / 50); toleranceM > sideM * 1e-6; toleranceM /= 8) {
    const found = interiorPoint(ring, holes, toleranceM);
    if (found) return found.point;
  }
  return ring[0]!;
});

/** Each paddock with the first name whose point lies in it. A paddock that keeps its name keeps its object. */
export function withNames(paddocks: readonly Paddock[], names: Iterable<PaddockName>, plane: LocalPlane): Paddock[] {
  const nameIn = findName(names, plane);
  return paddocks.map((paddock) => {
    const named = nameIn(paddock);
    return named === paddock.named ? paddock : { ...paddock, named, name: named?.name || null };
  });
}

/** Finds the first name whose point lies in a paddock. */
function findName(names: Iterable<PaddockName>, plane: LocalPlane): (paddock: Paddock) => PaddockName | null {
  const placed = [...names].flatMap((named) => {
    return isPlaceOnEarth(named.at) ? [{ named, xy: placeOfName(named.at, plane) }] : [];
  });
  if (placed.length === 0) return () => null;
  const tree = boxTree(placed.length, (add) => {
    for (const { xy } of placed) add(xy[0], xy[1], xy[0], xy[1]);
  });
  return (paddock) => {
    const inside = tree.search(boxOfRing(paddock.ring), (index) => isInside(placed[index]!.xy, paddock));
    return inside.length === 0 ? null : placed[leastOf(inside)]!.named;
  };
}

const placeOfName = keptWhile((at: LonLat, plane: LocalPlane): Xy => plane.toXy(at));

const boxOfRing = keptFor((ring: readonly Xy[]): Box => boxAround(ring)!);

function isInside(point: Xy, { ring, holes }: Paddock): boolean {
  return pointInRing(point, ring) && !holes.some((hole) => pointInRing(point, hole));
}

function fromLeastVertex(ring: readonly Xy[]): readonly Xy[] {
  let least = 0;
  for (let i = 1; i < ring.length; i++) {
    const [x, y] = ring[i]!;
    const [leastX, leastY] = ring[least]!;
    if (x < leastX || (x === leastX && y < leastY)) least = i;
  }
  return [...ring.slice(least), ...ring.slice(0, least)];
}

const sameRing = (a: readonly Xy[], b: readonly Xy[]): boolean =>
  a.length === b.length && a.every(([x, y], i) => x === b[i]![0] && y === b[i]![1]);

const sameRings = (a: readonly (readonly Xy[])[], b: readonly (readonly Xy[])[]): boolean =>
  a.length === b.length && a.every((ring, i) => sameRing(ring, b[i]!));

/** A point in each paddock that has no name yet, for the names that an edit gives them. */
export function placesToName(paddocks: readonly Paddock[], plane: LocalPlane): LonLat[] {
  return paddocks.flatMap((paddock) => (paddock.named ? [] : [plane.toLonLat(middleOf(paddock))]));
}
