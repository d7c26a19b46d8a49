import type { Xy } from '../../../core/geometry/types.ts';
import { toPx } from '../plane/view.ts';
import { disc } from '../signs/pen.ts';
import type { Look } from './look.ts';
import { mapFont } from './mapFont.ts';
import { tracePlanePath } from './pixelPath.ts';

/** What Record lays over the drawing. */
export interface RecordOverlay {
  /** Crossings that were measured, where they really lie. */
  readonly built: readonly RecordedCrossing[];
  /** Paths and places as they had been planned, where that is not where they were built. */
  readonly planned: readonly (readonly Xy[])[];
}

export interface RecordedCrossing {
  readonly path: readonly Xy[];
  readonly points: readonly RecordedPoint[];
}

export interface RecordedPoint {
  readonly xy: Xy;
  /** The mirror point that the ties alone cannot tell from it. */
  readonly mirror: Xy | null;
  readonly ties: readonly { readonly from: Xy; readonly text: string }[];
}

/** From so many pixels a metre on, ties are drawn, and from so many their lengths too. */
const tiesFromPxPerM = 6;
const wordsFromPxPerM = 22;
const buriedDash = [7, 5];

/** Planned faint, built strong: the trenches as measured, their points and tapes, and where things had been planned. */
export function paintRecord(look: Look): void {
  const { record } = look.input;
  if (!record) return;
  for (const path of record.planned) paintPlanned(look, path);
  for (const crossing of record.built) paintBuilt(look, crossing);
}

function paintPlanned({ ctx, view, palette }: Look, path: readonly Xy[]): void {
  ctx.strokeStyle = palette.inkSoft;
  ctx.lineWidth = 1.2;
  ctx.setLineDash([2, 4]);
  if (path.length === 1) {
    const [x, y] = toPx(view, path[0]!);
    disc(ctx, x, y, 7);
  } else {
    ctx.beginPath();
    tracePlanePath(ctx, view, path);
  }
  ctx.stroke();
  ctx.setLineDash([]);
}

function paintBuilt(look: Look, { path, points }: RecordedCrossing): void {
  const { ctx, view, palette, linePx } = look;
  const draw = (widthPx: number, style: string, dash: readonly number[]) => {
    ctx.beginPath();
    tracePlanePath(ctx, view, path);
    ctx.setLineDash([...dash]);
    ctx.lineWidth = widthPx;
    ctx.strokeStyle = style;
    ctx.stroke();
  };
  draw(linePx + 4, palette.paper, []);
  draw(Math.max(2.4, linePx), palette.ink, buriedDash);
  ctx.setLineDash([]);
  if (view.pxPerM < tiesFromPxPerM) return;
  for (const point of points) paintPoint(look, point);
}

function paintPoint(look: Look, { xy, mirror, ties }: RecordedPoint): void {
  const { ctx, view, palette } = look;
  const [x, y] = toPx(view, xy);
  ctx.strokeStyle = palette.accent;
  ctx.lineWidth = 1.2;
  for (const { from } of ties) {
    ctx.beginPath();
    tracePlanePath(ctx, view, [from, xy]);
    ctx.stroke();
  }
  if (mirror) {
    const [mx, my] = toPx(view, mirror);
    disc(ctx, mx, my, 4.5);
    ctx.fillStyle = palette.paper;
    ctx.fill();
    ctx.stroke();
  }
  disc(ctx, x, y, 4.5);
  ctx.fillStyle = palette.accent;
  ctx.fill();
  if (view.pxPerM >= wordsFromPxPerM) for (const tie of ties) paintTape(look, xy, tie);
}

/** The tape's length, along it. */
function paintTape({ ctx, view, palette }: Look, xy: Xy, { from, text }: RecordedPoint['ties'][number]): void {
  const [ax, ay] = toPx(view, from);
  const [bx, by] = toPx(view, xy);
  const lengthPx = Math.hypot(bx - ax, by - ay);
  ctx.font = mapFont();
  if (lengthPx < ctx.measureText(text).width + 12) return;
  let angle = Math.atan2(by - ay, bx - ax);
  if (Math.abs(angle) > Math.PI / 2) angle += Math.PI;
  ctx.save();
  ctx.translate((ax + bx) / 2, (ay + by) / 2);
  ctx.rotate(angle);
  ctx.textAlign = 'center';
  ctx.textBaseline = 'bottom';
  ctx.lineWidth = 3.5;
  ctx.strokeStyle = palette.paper;
  ctx.strokeText(text, 0, -3);
  ctx.fillStyle = palette.ink;
  ctx.fillText(text, 0, -3);
  ctx.restore();
}
