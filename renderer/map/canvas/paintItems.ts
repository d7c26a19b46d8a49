import type {
  CirclesItem,
  ClipItem,
  FontRole,
  Item,
  PaperPoint,
  PathItem,
  Stroke,
  TextItem,
  TracesItem,
} from '../../../core/drawing/displayList.ts';
import type { Ctx } from './shapes.ts';

/** Draws a display list on a canvas whose unit, as the list's, is the CSS pixel. */
export function paintItems(ctx: Ctx, items: readonly Item[]): void {
  for (const item of items) paintItem(ctx, item);
}

function paintItem(ctx: Ctx, item: Item): void {
  switch (item.kind) {
    case 'path':
      paintPath(ctx, item);
      break;
    case 'traces':
      paintTraces(ctx, item);
      break;
    case 'circles':
      paintCircles(ctx, item);
      break;
    case 'text':
      paintText(ctx, item);
      break;
    case 'clip':
      paintClip(ctx, item);
      break;
    case 'tagged':
      paintItems(ctx, item.items);
      break;
    default:
      // Photos, links and anchors are for paper.
      break;
  }
}

function paintPath(ctx: Ctx, { paths, closed, stroke, fill }: PathItem): void {
  ctx.beginPath();
  for (const path of paths) tracePath(ctx, path, closed);
  if (fill) {
    ctx.fillStyle = fill;
    ctx.fill('evenodd');
  }
  if (stroke) strokeWith(ctx, stroke, 'round');
}

function tracePath(ctx: Ctx, path: readonly PaperPoint[], closed: boolean): void {
  if (path.length < 2) return;
  ctx.moveTo(path[0]![0], path[0]![1]);
  for (let i = 1; i < path.length; i++) ctx.lineTo(path[i]![0], path[i]![1]);
  if (closed) ctx.closePath();
}

/** On a thin line nobody sees how its corners are joined, and bevelled it is drawn in two thirds of the time. */
const bevelledBelowPx = 2;

function paintTraces(ctx: Ctx, { coordinates, ends, stroke }: TracesItem): void {
  ctx.beginPath();
  let i = 0;
  for (const end of ends) {
    ctx.moveTo(coordinates[i]!, coordinates[i + 1]!);
    for (i += 2; i < end; i += 2) ctx.lineTo(coordinates[i]!, coordinates[i + 1]!);
  }
  strokeWith(ctx, stroke, stroke.width < bevelledBelowPx ? 'bevel' : 'round');
}

function paintCircles(ctx: Ctx, { centres, radius, stroke, fill }: CirclesItem): void {
  ctx.beginPath();
  for (const [x, y] of centres) {
    ctx.moveTo(x + radius, y);
    ctx.arc(x, y, radius, 0, 2 * Math.PI);
  }
  if (fill) {
    ctx.fillStyle = fill;
    ctx.fill();
  }
  if (stroke) strokeWith(ctx, stroke, 'round');
}

const noDash: number[] = [];

function strokeWith(ctx: Ctx, { width, ink, dash, cap }: Stroke, join: CanvasLineJoin): void {
  ctx.strokeStyle = ink;
  ctx.lineWidth = width;
  ctx.lineCap = cap ?? 'butt';
  ctx.lineJoin = join;
  if (dash) ctx.setLineDash([...dash]);
  ctx.stroke();
  if (dash) ctx.setLineDash(noDash);
}

const alignments = { left: 'left', centre: 'center', right: 'right' } as const;

function paintText(ctx: Ctx, item: TextItem): void {
  const { text, font, size, rotationDeg, halo } = item;
  let [x, y] = item.at;
  ctx.font = canvasFont(font, size);
  ctx.textAlign = alignments[item.align];
  ctx.textBaseline = 'alphabetic';
  if (rotationDeg !== 0) {
    ctx.save();
    ctx.translate(x, y);
    ctx.rotate((rotationDeg * Math.PI) / 180);
    [x, y] = [0, 0];
  }
  if (halo > 0) {
    ctx.strokeStyle = item.haloInk;
    ctx.lineWidth = 2 * halo;
    ctx.lineJoin = 'round';
    ctx.strokeText(text, x, y);
  }
  ctx.fillStyle = item.ink;
  ctx.fillText(text, x, y);
  if (rotationDeg !== 0) ctx.restore();
}

/** The map's typeface as a canvas names it. */
export function canvasFont(role: FontRole, sizePx: number): string {
  const cut = role === 'bold' ? '700 ' : role === 'italic' ? 'italic ' : '';
  return `${cut}${sizePx}px "Atkinson Hyperlegible", "DejaVu Sans", sans-serif`;
}

function paintClip(ctx: Ctx, { box: [left, top, right, bottom], items }: ClipItem): void {
  ctx.save();
  ctx.beginPath();
  ctx.rect(left, top, right - left, bottom - top);
  ctx.clip();
  paintItems(ctx, items);
  ctx.restore();
}
