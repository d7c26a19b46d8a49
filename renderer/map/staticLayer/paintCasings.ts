import type { Xy } from '../../../core/geometry/types.ts';
import type { Look } from './look.ts';
import { tracePlanePath } from './pixelPath.ts';

/** Lines that are stroked in one go; see `paintLines`. */
const portion = 150;
/** Of paper on either side of a line. */
const edgePx = 2.5;

/** Paper under every line, so that the drawing is told from a picture beneath, however dark or busy that is. */
export function* paintCasings(look: Look, paths: readonly (readonly Xy[])[]): Generator<void> {
  if (!look.overPicture) return;
  const { ctx, view, palette, linePx } = look;
  ctx.strokeStyle = palette.paper;
  ctx.lineWidth = linePx + 2 * edgePx;
  ctx.lineJoin = 'round';
  for (let i = 0; i < paths.length; i += portion) {
    ctx.beginPath();
    for (const path of paths.slice(i, i + portion)) tracePlanePath(ctx, view, path);
    ctx.globalAlpha = 0.8;
    ctx.stroke();
    ctx.globalAlpha = 1;
    yield;
  }
}
