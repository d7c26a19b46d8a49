import type { Box } from '../../../../core/geometry/box.ts';
import type { Xy } from '../../../../core/geometry/types.ts';
import type { MapId } from '../../mapTypes.ts';
import type { Scene } from '../../scene/buildScene.ts';
import type { Part } from '../../scene/parts.ts';

/** Ids of what lies wholly between two opposite corners. Paddocks and crossings come with their fences and gateways. */
export function idsInBox(scene: Scene, a: Xy, b: Xy): MapId[] {
  const box: Box = [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[0], b[0]), Math.max(a[1], b[1])];
  const ids = new Set<MapId>();
  for (const { id, kind } of scene.search(box)) {
    if (kind === 'paddock' || kind === 'crossing' || ids.has(id)) continue;
    if (scene.partsOf.get(id)!.every((part) => isInside(part, box))) ids.add(id);
  }
  return [...ids];
}

/** A gateway counts by its posts, not by the swing of its leaf. */
function isInside(part: Part, box: Box): boolean {
  if (part.kind === 'gateway') return [part.shape.startPost, part.shape.endPost].every((post) => isIn(post, box));
  const [west, south, east, north] = part.box;
  return isIn([west, south], box) && isIn([east, north], box);
}

const isIn = ([x, y]: Xy, [west, south, east, north]: Box): boolean =>
  x >= west && x <= east && y >= south && y <= north;
