import type { Item } from '../../../core/drawing/displayList.ts';
import { spotSign } from '../../../core/drawing/signs/crossingSign.ts';
import { inGroundLine, inGroundSign } from '../../../core/drawing/signs/inGroundSign.ts';
import { toPx } from '../plane/view.ts';
import type { InGroundPart } from '../scene/parts.ts';
import type { Look } from './look.ts';
import { pixelPath } from './pixelPath.ts';

/** What is left in the ground, every way that it may lie: dashed, crossed where it is dead; a sign in its middle, since nothing else stands there. */
export function drawInGround({ view, pen }: Look, parts: readonly InGroundPart[]): Item[] {
  return parts.flatMap(({ left: { path, ways, thing } }) => {
    const dead = thing.fate === 'dead';
    const lines = ways.flatMap((way) => (way.length > 1 ? [pixelPath(view, way)] : []));
    const spots = ways.flatMap((way) => (way.length === 1 ? [toPx(view, way[0]!)] : []));
    return [
      ...inGroundLine(lines, dead, pen),
      ...spots.flatMap((spot) => spotSign(spot, { status: 'built' }, pen).items),
      ...inGroundSign(toPx(view, path[path.length >> 1] ?? [0, 0]), dead, pen).items,
    ];
  });
}
