import { type Box, boxesMeet, boxOfSegment } from './box.ts';
import { boxTree } from './boxTree.ts';
import { type NearestOnSegment, nearestOnSegment } from './polyline.ts';
import type { Xy } from './types.ts';

/** One segment of one path, numbered from 0. */
export interface SegmentRef<K> {
  readonly key: K;
  readonly segment: number;
}

export interface NearSegment<K> extends SegmentRef<K>, NearestOnSegment {}

/** Where everything lies, for snapping and drawing. A path of one vertex is a point and has one segment, 0. */
export interface SpatialIndex<K> {
  /** Puts a path in, or in place of the one of that key. */
  readonly set: (key: K, path: readonly Xy[]) => void;
  readonly delete: (key: K) => void;
  /** Segments whose own boxes share a point with this one, in no order. */
  readonly search: (box: Box) => SegmentRef<K>[];
  /** Segments within a radius of a point, the nearest first. */
  readonly near: (point: Xy, radiusM: number) => NearSegment<K>[];
  readonly nearest: (point: Xy, radiusM: number, accept?: (key: K) => boolean) => NearSegment<K> | null;
}

/** So many changed segments are looked through one by one before all are packed anew. */
const mostLooseSegments = 1000;

/**
 * An index of the segments of many paths: most of them packed once in a Flatbush tree, the few changed since then kept
 * loose beside it, so that one edit among tens of thousands of segments costs next to nothing.
 */
export function createSpatialIndex<K>(entries: Iterable<readonly [K, readonly Xy[]]> = []): SpatialIndex<K> {
  const paths = new Map<K, readonly Xy[]>(entries);
  let packed = pack(paths);
  let loose = new Map<K, readonly Xy[]>();
  /** Keys whose packed segments no longer hold. */
  let stale = new Set<K>();
  let looseSegments = 0;

  function change(key: K, path: readonly Xy[] | null): void {
    if (packed.keys.has(key)) stale.add(key);
    looseSegments += (path?.length ?? 1) - (loose.get(key)?.length ?? 0);
    if (path) {
      paths.set(key, path);
      loose.set(key, path);
    } else {
      paths.delete(key);
      loose.delete(key);
    }
  }

  function packWhenLarge(): void {
    if (looseSegments + stale.size <= mostLooseSegments) return;
    packed = pack(paths);
    loose = new Map();
    stale = new Set();
    looseSegments = 0;
  }

  function search(box: Box): SegmentRef<K>[] {
    packWhenLarge();
    const found = packed.search(box).filter(({ key }) => !stale.has(key));
    for (const [key, path] of loose) {
      for (let segment = 0; segment < segmentCount(path); segment++) {
        if (boxesMeet(segmentBox(path, segment), box)) found.push({ key, segment });
      }
    }
    return found;
  }

  function near([x, y]: Xy, radiusM: number): NearSegment<K>[] {
    return search([x - radiusM, y - radiusM, x + radiusM, y + radiusM])
      .map(({ key, segment }) => {
        const path = paths.get(key)!;
        return { key, segment, ...nearestOnSegment([x, y], path[segment]!, path[segment + 1] ?? path[segment]!) };
      })
      .filter(({ distanceM }) => distanceM <= radiusM)
      .sort((p, q) => p.distanceM - q.distanceM);
  }

  return {
    set: (key, path) => change(key, path),
    delete: (key) => {
      if (paths.has(key)) change(key, null);
    },
    search,
    near,
    nearest: (point, radiusM, accept = () => true) => near(point, radiusM).find(({ key }) => accept(key)) ?? null,
  };
}

interface Packed<K> {
  readonly keys: ReadonlySet<K>;
  readonly search: (box: Box) => SegmentRef<K>[];
}

function pack<K>(paths: ReadonlyMap<K, readonly Xy[]>): Packed<K> {
  const refs: SegmentRef<K>[] = [];
  for (const [key, path] of paths) {
    for (let segment = 0; segment < segmentCount(path); segment++) refs.push({ key, segment });
  }
  const tree = boxTree(refs.length, (add) => {
    for (const { key, segment } of refs) add(...segmentBox(paths.get(key)!, segment));
  });
  return { keys: new Set(paths.keys()), search: (box) => tree.search(box).map((found) => refs[found]!) };
}

function segmentCount(path: readonly Xy[]): number {
  return path.length === 1 ? 1 : Math.max(0, path.length - 1);
}

function segmentBox(path: readonly Xy[], segment: number): Box {
  return boxOfSegment(path[segment]!, path[segment + 1] ?? path[segment]!);
}
