import type { Xy } from '../../../core/geometry/types.ts';
import type { MapId } from '../mapTypes.ts';
import type { Scene } from './buildScene.ts';
import { partDistanceM } from './partDistance.ts';
import type { Part } from './parts.ts';

/** Which of two things under the pointer is meant: small signs before the lines they stand on, lines before areas. */
const rank: Readonly<Record<Part['kind'], number>> = {
  switch: 0,
  energiser: 1,
  earthField: 1,
  post: 2,
  gateway: 3,
  crossing: 4,
  leadOut: 5,
  inGround: 5,
  piece: 6,
  service: 7,
  paddock: 8,
};

export interface Hit {
  readonly part: Part;
  readonly distanceM: number;
}

/** Signs are as wide as they are drawn, whatever the ground they stand on: a radius in pixels. */
const signRadiusPx: Readonly<Record<Part['kind'], number>> = {
  switch: 16,
  energiser: 18,
  earthField: 16,
  post: 10,
  gateway: 10,
  crossing: 7,
  leadOut: 8,
  inGround: 9,
  piece: 9,
  service: 7,
  paddock: 0,
};

/**
 * What lies under a point, the likeliest meant first: anything already chosen, then by kind, then by distance. One hit
 * for each id.
 */
export function pick(scene: Scene, at: Xy, pxPerM: number, chosen: readonly MapId[]): Hit[] {
  // The largest radius, and a switch's sign stands off its place by as much again.
  const reachM = 34 / pxPerM;
  const [x, y] = at;
  const near = scene.search([x - reachM, y - reachM, x + reachM, y + reachM]);
  const best = new Map<MapId, Hit>();
  for (const part of near) {
    const distanceM = partDistanceM(part, at, pxPerM);
    if (distanceM > signRadiusPx[part.kind] / pxPerM) continue;
    const known = best.get(part.id);
    if (!known || distanceM < known.distanceM) best.set(part.id, { part, distanceM });
  }
  return [...best.values()].sort((a, b) => compareHits(a, b, chosen));
}

function compareHits(a: Hit, b: Hit, chosen: readonly MapId[]): number {
  // A chosen area must not hide what stands in it.
  const firstA = a.part.kind !== 'paddock' && chosen.includes(a.part.id) ? 0 : 1;
  const firstB = b.part.kind !== 'paddock' && chosen.includes(b.part.id) ? 0 : 1;
  return firstA - firstB || rank[a.part.kind] - rank[b.part.kind] || a.distanceM - b.distanceM;
}
