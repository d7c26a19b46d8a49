import type { Xy } from '../../../core/geometry/types.ts';
import { toPx } from '../plane/view.ts';
import type { InGroundPart } from '../scene/parts.ts';
import { at, disc, line } from '../signs/pen.ts';
import type { Look } from './look.ts';
import { mapFont } from './mapFont.ts';
import { marksAlong } from './marksAlong.ts';
import { buriedDash } from './paintCrossings.ts';
import { pixelPath, tracePlanePath } from './pixelPath.ts';

/** Crosses stand so far apart along what is dead. */
const crossSpacingPx = 26;
const crossPx = 4;
const signPx = 8;

/** What is left in the ground, every way that it may lie: dashed, crossed where it is dead; a sign in its middle, since nothing else stands there. */
export function paintInGround(look: Look, parts: readonly InGroundPart[]): void {
  for (const part of parts) paintOne(look, part);
  look.ctx.setLineDash([]);
}

function paintOne(look: Look, { left }: InGroundPart): void {
  const { ctx, view, palette, linePx } = look;
  const { path, ways, thing } = left;
  const dead = thing.fate === 'dead';
  ctx.lineJoin = 'round';
  ctx.lineCap = 'butt';
  const lines = ways.filter((way) => way.length > 1);
  if (lines.length > 0) {
    for (const [colour, width, dash] of [
      [palette.paper, linePx + 3, []],
      [palette.ink, Math.max(1.4, linePx * 0.8), buriedDash],
    ] as const) {
      ctx.beginPath();
      for (const way of lines) tracePlanePath(ctx, view, way);
      ctx.setLineDash([...dash]);
      ctx.strokeStyle = colour;
      ctx.lineWidth = width;
      ctx.stroke();
    }
    ctx.setLineDash([]);
    if (dead) {
      ctx.lineWidth = 1.6;
      for (const { x, y, angle } of lines.flatMap((way) => marksAlong(pixelPath(view, way), crossSpacingPx))) {
        at(ctx, [x, y], angle, () => drawCross(look, crossPx));
      }
    }
  }
  drawSign(look, middleOf(path), dead);
}

function middleOf(path: readonly Xy[]): Xy {
  return path[path.length >> 1] ?? [0, 0];
}

/** A disc with a cross (dead) or an exclamation mark (may be live). */
function drawSign(look: Look, xy: Xy, dead: boolean): void {
  const { ctx, view, palette } = look;
  const [x, y] = toPx(view, xy);
  disc(ctx, x, y, signPx);
  ctx.fillStyle = palette.paper;
  ctx.fill();
  ctx.strokeStyle = palette.ink;
  ctx.lineWidth = 1.8;
  ctx.stroke();
  if (dead) {
    at(ctx, [x, y], 0, () => drawCross(look, 3.6));
    return;
  }
  ctx.fillStyle = palette.ink;
  ctx.font = mapFont(700);
  ctx.textAlign = 'center';
  ctx.textBaseline = 'middle';
  ctx.fillText('!', x, y + 1);
}

function drawCross({ ctx }: Look, px: number): void {
  line(ctx, -px, -px, px, px);
  line(ctx, -px, px, px, -px);
}
