import { facesOfLines } from '../geometry/facesOfLines.ts';
import { ringAreaM2 } from '../geometry/geodesic.ts';
import type { LocalPlane } from '../geometry/localPlane.ts';
import { type Box, boxAround } from '../geometry/plane/box.ts';
import { interiorPoint } from '../geometry/plane/interiorPoint.ts';
import { pointInRing } from '../geometry/plane/pointInRing.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import type { PaddockName } from '../model/things.ts';
import { isPlaceOnEarth } from '../network/workingPlane.ts';
import type { LineShape, Paddock } from './types.ts';

export const unnamedPaddock = 'Not named yet';

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
  const known = new Map(before.map((paddock) => [keyOf(paddock.ring), paddock]));
  const faces = facesOfLines(
    [...lines.values()].map(({ xy }) => xy),
    snapToleranceM,
  );
  const paddocks = faces.flatMap(({ shell, holes }) => {
    const ring = fromLeastVertex(shell);
    const old = known.get(keyOf(ring));
    const same = old && sameRing(old.ring, ring) && sameRings(old.holes, holes);
    if (same) return [old];
    const inside = interiorPoint(ring, holes, labelToleranceM(ring))?.point;
    return inside ? [unnamed(ring, holes, inside, plane)] : [];
  });
  return withNames(paddocks, names, plane);
}

/** A label need not stand at the very middle: a fiftieth of the paddock's lesser side will do. */
function labelToleranceM(ring: readonly Xy[]): number {
  const [minX, minY, maxX, maxY] = boxAround(ring)!;
  return Math.max(1, Math.min(maxX - minX, maxY - minY) / 50);
}

function unnamed(ring: readonly Xy[], holes: readonly (readonly Xy[])[], inside: Xy, plane: LocalPlane): Paddock {
  const areaOf = (vertices: readonly Xy[]): number => ringAreaM2(vertices.map(plane.toLonLat));
  const areaM2 = holes.reduce((rest, hole) => rest - areaOf(hole), areaOf(ring));
  return { named: null, name: unnamedPaddock, ring, holes, areaM2, inside, insideAt: plane.toLonLat(inside) };
}

/** Each paddock with the first name whose point lies in it. A paddock that keeps its name keeps its object. */
export function withNames(paddocks: readonly Paddock[], names: Iterable<PaddockName>, plane: LocalPlane): Paddock[] {
  const places = [...names].flatMap((named) => {
    const xy = placeOfName(named, plane);
    return xy ? [{ named, xy }] : [];
  });
  return paddocks.map((paddock) => {
    const box = boxOf(paddock);
    const named = places.find(({ xy }) => inBox(xy, box) && isInside(xy, paddock))?.named ?? null;
    return named === paddock.named ? paddock : { ...paddock, named, name: named?.name || unnamedPaddock };
  });
}

const places = new WeakMap<LonLat, { readonly plane: LocalPlane; readonly xy: Xy }>();

function placeOfName({ at }: PaddockName, plane: LocalPlane): Xy | null {
  if (!isPlaceOnEarth(at)) return null;
  let place = places.get(at);
  if (place?.plane !== plane) {
    place = { plane, xy: plane.toXy(at) };
    places.set(at, place);
  }
  return place.xy;
}

const boxes = new WeakMap<readonly Xy[], Box>();

function boxOf({ ring }: Paddock): Box {
  let box = boxes.get(ring);
  if (!box) {
    box = boxAround(ring)!;
    boxes.set(ring, box);
  }
  return box;
}

function inBox([x, y]: Xy, [minX, minY, maxX, maxY]: Box): boolean {
  return x >= minX && x <= maxX && y >= minY && y <= maxY;
}

function isInside(point: Xy, { ring, holes }: Paddock): boolean {
  return pointInRing(point, ring) && !holes.some((hole) => pointInRing(point, hole));
}

function fromLeastVertex(ring: readonly Xy[]): readonly Xy[] {
  let least = 0;
  for (const [i, [x, y]] of ring.entries()) {
    const [lx, ly] = ring[least]!;
    if (x < lx || (x === lx && y < ly)) least = i;
  }
  return [...ring.slice(least), ...ring.slice(0, least)];
}

/** Enough to find the same ring again; `sameRing` then makes sure. */
const keyOf = (ring: readonly Xy[]): string => [ring.length, ring[0], ring[ring.length >> 1]].join();

const sameRing = (a: readonly Xy[], b: readonly Xy[]): boolean =>
  a.length === b.length && a.every(([x, y], i) => x === b[i]![0] && y === b[i]![1]);

const sameRings = (a: readonly (readonly Xy[])[], b: readonly (readonly Xy[])[]): boolean =>
  a.length === b.length && a.every((ring, i) => sameRing(ring, b[i]!));

/** A point in each paddock that has no name yet, for the names that an edit gives them. */
export function placesToName(paddocks: readonly Paddock[]): LonLat[] {
  return paddocks.flatMap(({ named, insideAt }) => (named ? [] : [insideAt]));
}
