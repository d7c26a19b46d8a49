import type { Palette } from '../../../core/drawing/palette.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { at, type Ctx, disc, line } from '../canvas/shapes.ts';
import { type Px, toPx, type View } from '../plane/view.ts';
import { mapFont } from '../staticLayer/mapFont.ts';
import { tracePlanePath } from '../staticLayer/pixelPath.ts';
import type { PaintTools } from '../tools/tool.ts';
import type { SnapTarget } from './snapping.ts';

/** The sign of what the pointer snaps to, one shape for each kind, with its name beside it. */
export function drawSnapCue({ ctx, view, palette, say }: PaintTools, target: SnapTarget): void {
  const place = toPx(view, target.xy);
  outlined(ctx, palette, () => snapShape(ctx, place, target.kind));
  drawTag(ctx, palette, [place[0] + 16, place[1] - 22], say(target.spot), 'left');
}

function snapShape(ctx: Ctx, [x, y]: Px, kind: SnapTarget['kind']): void {
  const r = 9;
  ctx.beginPath();
  if (kind === 'post') ctx.rect(x - r, y - r, 2 * r, 2 * r);
  else if (kind === 'gatePost') {
    ctx.rect(x - r, y - r, 2 * r, 2 * r);
    ctx.moveTo(x - r, y);
    ctx.lineTo(x + r, y);
  } else if (kind === 'vertex') {
    ctx.moveTo(x, y - r - 2);
    ctx.lineTo(x + r + 2, y);
    ctx.lineTo(x, y + r + 2);
    ctx.lineTo(x - r - 2, y);
    ctx.closePath();
  } else if (kind === 'line') {
    ctx.moveTo(x - r, y - r);
    ctx.lineTo(x + r, y + r);
    ctx.moveTo(x - r, y + r);
    ctx.lineTo(x + r, y - r);
  } else {
    ctx.arc(x, y, r, 0, 2 * Math.PI);
    if (kind === 'energiser') {
      ctx.moveTo(x + r + 4, y);
      ctx.arc(x, y, r + 4, 0, 2 * Math.PI);
    }
  }
  ctx.stroke();
}

/** Strokes twice, paper under accent, so that it is seen on anything. */
function outlined(ctx: Ctx, palette: Palette, shape: () => void): void {
  for (const [colour, width] of [
    [palette.paper, 5.5],
    [palette.accent, 2.5],
  ] as const) {
    ctx.strokeStyle = colour;
    ctx.lineWidth = width;
    shape();
  }
}

/** A short text on its own ground. */
export function drawTag(ctx: Ctx, palette: Palette, [x, y]: Px, text: string, align: 'left' | 'center'): void {
  ctx.font = mapFont(700);
  const width = ctx.measureText(text).width + 14;
  const left = align === 'left' ? x : x - width / 2;
  ctx.beginPath();
  ctx.roundRect(left, y - 12, width, 24, 4);
  ctx.fillStyle = palette.paper;
  ctx.fill();
  ctx.strokeStyle = palette.accent;
  ctx.lineWidth = 1.5;
  ctx.stroke();
  ctx.fillStyle = palette.ink;
  ctx.textAlign = 'left';
  ctx.textBaseline = 'middle';
  ctx.fillText(text, left + 7, y + 1);
}

/** The line under the hand, with an open end where the pointer is. */
export function drawRubber({ ctx, view, palette }: PaintTools, path: readonly Xy[], dashed: boolean): void {
  ctx.lineJoin = 'round';
  ctx.lineCap = 'round';
  for (const [colour, width] of [
    [palette.paper, 6],
    [palette.accent, 3],
  ] as const) {
    ctx.setLineDash(dashed && colour === palette.accent ? [9, 7] : []);
    ctx.beginPath();
    tracePlanePath(ctx, view, path);
    ctx.strokeStyle = colour;
    ctx.lineWidth = width;
    ctx.stroke();
  }
  ctx.setLineDash([]);
}

/** A wide glow over what is chosen, pointed at or lit. */
export function drawHalo({ ctx, view, palette }: PaintTools, path: readonly Xy[], widthPx: number): void {
  ctx.lineJoin = 'round';
  ctx.lineCap = 'round';
  ctx.beginPath();
  tracePlanePath(ctx, view, path);
  ctx.strokeStyle = palette.halo;
  ctx.lineWidth = widthPx;
  ctx.stroke();
}

export function drawHaloAt({ ctx, view, palette }: PaintTools, place: Xy, radiusPx: number): void {
  const [x, y] = toPx(view, place);
  disc(ctx, x, y, radiusPx);
  ctx.fillStyle = palette.halo;
  ctx.fill();
  ctx.strokeStyle = palette.accent;
  ctx.lineWidth = 2;
  ctx.stroke();
}

/** A handle to drag: square at a corner, round and smaller where dragging makes a new one. */
export function drawHandle(
  { ctx, palette }: Pick<PaintTools, 'ctx' | 'palette'>,
  [x, y]: Px,
  kind: 'corner' | 'middle' | 'bow',
  active: boolean,
): void {
  ctx.beginPath();
  if (kind === 'corner') ctx.rect(x - 6, y - 6, 12, 12);
  else if (kind === 'middle') ctx.arc(x, y, 5, 0, 2 * Math.PI);
  else {
    ctx.moveTo(x, y - 9);
    ctx.lineTo(x + 9, y);
    ctx.lineTo(x, y + 9);
    ctx.lineTo(x - 9, y);
    ctx.closePath();
  }
  ctx.fillStyle = active ? palette.accent : palette.paper;
  ctx.fill();
  ctx.strokeStyle = palette.accent;
  ctx.lineWidth = 2.5;
  ctx.stroke();
  if (!active) return;
  ctx.beginPath();
  ctx.rect(x - 10, y - 10, 20, 20);
  ctx.lineWidth = 1.5;
  ctx.stroke();
}

/** The keyboard's cross. */
export function drawCross(ctx: Ctx, palette: Palette, place: Px): void {
  at(ctx, place, () => {
    outlined(ctx, palette, () => {
      line(ctx, -18, 0, -5, 0);
      line(ctx, 5, 0, 18, 0);
      line(ctx, 0, -18, 0, -5);
      line(ctx, 0, 5, 0, 18);
    });
  });
}

/** A length beside the middle of a segment that is being drawn or dragged. */
export function drawSegmentLength(tools: PaintTools, a: Xy, b: Xy, text: string): void {
  const [ax, ay] = toPx(tools.view, a);
  const [bx, by] = toPx(tools.view, b);
  const lengthPx = Math.hypot(bx - ax, by - ay);
  if (lengthPx < 40) return;
  // On the upper side of the segment, clear of it.
  const up = bx >= ax ? 1 : -1;
  const [nx, ny] = [(up * (by - ay)) / lengthPx, (-up * (bx - ax)) / lengthPx];
  drawTag(tools.ctx, tools.palette, [(ax + bx) / 2 + nx * 26, (ay + by) / 2 + ny * 22], text, 'center');
}

export function isInView(view: View, [x, y]: Px, marginPx = 10): boolean {
  return x > -marginPx && y > -marginPx && x < view.widthPx + marginPx && y < view.heightPx + marginPx;
}
