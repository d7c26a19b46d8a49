import type { Item } from '../../../core/drawing/displayList.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import type { Look } from './look.ts';
import { pixelTraces } from './pixelPath.ts';

/** Lines that are stroked in one go; see `drawLines`. */
const portion = 150;
/** Of paper on either side of a line. */
const edgePx = 2.5;

/** Paper under every line, so that the drawing is told from a picture beneath, however dark or busy that is. */
export function* drawCasings(look: Look, paths: readonly (readonly Xy[])[]): Generator<Item[]> {
  if (!look.overPicture) return;
  const { view, palette, linePx } = look;
  const stroke = { width: linePx + 2 * edgePx, ink: `${palette.paper}cc` } as const;
  for (let i = 0; i < paths.length; i += portion) yield [pixelTraces(view, paths.slice(i, i + portion), stroke)];
}
