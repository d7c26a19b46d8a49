import type { LonLat } from '../../model/things.ts';
import { boundsOf, middleOf } from './bounds.ts';
import type { PreviewFeature } from './types.ts';

/** Pieces of a file that lie together, each within about 30 km of the next. */
export interface PieceGroup {
  /** Where they stand in the preview's list, from 0. */
  readonly members: readonly number[];
  /** How many of them are lines or outlines. */
  readonly lines: number;
  /** How much speaks for it that the property is here: its points, and its lines ten times. */
  readonly weight: number;
  readonly middle: LonLat;
  /** Points at latitude 0, longitude 0, where a receiver without a fix puts them. */
  readonly noFix: boolean;
}

/** A line was drawn or walked on purpose; a point is often left over from another trip. Common practice, no source. */
const lineWeight = 10;

/** Two parts of one property may lie this far apart. */
const togetherM = 30_000;
const cellM = 10_000;
const cellsApart = 3;
/** A file over more ground than this is no property; it is left as one group. */
const mostCells = 20_000;
/** So many vertices of a line are looked at. */
const mostLookedAt = 500;
const earthM = 6_371_000;

/** Whether a place is the one that receivers write where they know none. */
export function isNoFix([lon, lat]: LonLat): boolean {
  return Math.abs(lon) < 1e-7 && Math.abs(lat) < 1e-7;
}

interface Cell {
  readonly at: readonly [x: number, y: number, z: number];
  /** Sum of the places in it, and how many. */
  readonly sum: [x: number, y: number, z: number];
  count: number;
  group: number;
}

/**
 * The groups in which the pieces of a file lie, the weightiest first. Cells of 10 km in space stand for places, so that
 * neither the poles nor the 180 meridian matter; pieces without a place are in no group.
 */
export function groupsOf(features: readonly PreviewFeature[]): PieceGroup[] {
  const cells: Cell[] = [];
  const known = new Map<number, number>();
  const cellOf = new Map<number, number>();
  const parent: number[] = [];
  const root = (cell: number): number => {
    let top = cell;
    while (parent[top] !== top) top = parent[top]!;
    for (let at = cell; parent[at] !== top; ) [at, parent[at]] = [parent[at]!, top];
    return top;
  };
  const join = (a: number, b: number) => {
    parent[root(a)] = root(b);
  };
  const noFix: number[] = [];
  for (const [index, { shape, path }] of features.entries()) {
    if (path.length === 0) continue;
    if (shape === 'point' && isNoFix(path[0]!)) {
      noFix.push(index);
      continue;
    }
    const step = Math.ceil(path.length / mostLookedAt);
    let own = -1;
    for (let i = 0; i < path.length; i += step) {
      const place = inSpace(path[i]!);
      const at = place.map((value) => Math.floor(value / cellM)) as [number, number, number];
      const key = keyOf(...at);
      let cell = known.get(key);
      if (cell === undefined) {
        cell = cells.length;
        cells.push({ at, sum: [0, 0, 0], count: 0, group: -1 });
        parent.push(cell);
        known.set(key, cell);
      }
      const { sum } = cells[cell]!;
      for (let axis = 0; axis < 3; axis++) sum[axis]! += place[axis]!;
      cells[cell]!.count++;
      if (own >= 0) join(own, cell);
      else cellOf.set(index, cell);
      own = cell;
    }
  }
  if (cells.length > mostCells) for (let cell = 1; cell < cells.length; cell++) join(0, cell);
  else joinNear(cells, known, join);
  const byRoot = Map.groupBy(cellOf.keys(), (index) => root(cellOf.get(index)!));
  const groups = [...byRoot.values()].map((members) => groupOf(features, members, false));
  groups.sort((a, b) => b.weight - a.weight || a.members[0]! - b.members[0]!);
  return noFix.length > 0 ? [...groups, groupOf(features, noFix, true)] : groups;
}

function joinNear(
  cells: readonly Cell[],
  known: ReadonlyMap<number, number>,
  join: (a: number, b: number) => void,
): void {
  for (const [index, cell] of cells.entries()) {
    const [x, y, z] = cell.at;
    for (let dx = 0; dx <= cellsApart; dx++) {
      for (let dy = -cellsApart; dy <= cellsApart; dy++) {
        for (let dz = -cellsApart; dz <= cellsApart; dz++) {
          const other = known.get(keyOf(x + dx, y + dy, z + dz));
          if (other !== undefined && other !== index && apartM(cell, cells[other]!) <= togetherM) join(index, other);
        }
      }
    }
  }
}

/** From the mean of the places in one cell to that of another. */
function apartM(a: Cell, b: Cell): number {
  return Math.hypot(...a.sum.map((value, axis) => value / a.count - b.sum[axis]! / b.count));
}

function keyOf(x: number, y: number, z: number): number {
  return ((x + 1024) * 2048 + (y + 1024)) * 2048 + (z + 1024);
}

function inSpace([lon, lat]: LonLat): [number, number, number] {
  const [east, north] = [(lon * Math.PI) / 180, (lat * Math.PI) / 180];
  const across = earthM * Math.cos(north);
  return [across * Math.cos(east), across * Math.sin(east), earthM * Math.sin(north)];
}

function groupOf(features: readonly PreviewFeature[], members: number[], noFix: boolean): PieceGroup {
  const pieces = members.map((index) => features[index]!);
  const lines = pieces.reduce((sum, { shape }) => sum + (shape === 'point' ? 0 : 1), 0);
  const weight = members.length - lines + lineWeight * lines;
  return { members, lines, weight, middle: middleOf(boundsOf(pieces)!), noFix };
}
