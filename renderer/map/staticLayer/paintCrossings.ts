import { pointAtStation } from '../../../core/geometry/polyline.ts';
import { isInTheGround } from '../../../core/locate/inTheGround.ts';
import { toPx } from '../plane/view.ts';
import type { CrossingPart, LeadOutPart } from '../scene/parts.ts';
import { disc } from '../signs/pen.ts';
import type { Look } from './look.ts';
import { tracePlanePath } from './pixelPath.ts';

/** Dashes of everything that lies buried, and dots of what is only planned to. */
export const buriedDash = [7, 5];
const plannedDash = [2, 4];
/** Crossings narrower than this are not drawn: their gateway's tick stands for them. */
const leastPx = 6;

/** Cables past the gateways: dashed where buried, a thin line with a ring where overhead. */
export function* paintCrossings(look: Look, parts: readonly CrossingPart[]): Generator<void> {
  for (const [i, part] of parts.entries()) {
    if (part.figures.chordM * look.view.pxPerM >= leastPx) paintCrossing(look, part);
    if (i % 200 === 199) yield;
  }
}

function paintCrossing(look: Look, { figures }: CrossingPart): void {
  const { ctx, view, palette, linePx } = look;
  const { path, crossing } = figures;
  const built = crossing.status === 'built' || isInTheGround(look.input.project, crossing);
  const overhead = crossing.method === 'overhead';
  ctx.beginPath();
  tracePlanePath(ctx, view, path);
  ctx.lineJoin = 'round';
  ctx.lineCap = 'butt';
  ctx.strokeStyle = palette.paper;
  ctx.lineWidth = linePx + 3;
  ctx.stroke();
  if (!overhead) ctx.setLineDash(built ? buriedDash : plannedDash);
  ctx.strokeStyle = palette.ink;
  ctx.lineWidth = built ? linePx : Math.max(1, linePx * 0.55);
  ctx.stroke();
  ctx.setLineDash([]);
  const lengthPx = figures.chordM * view.pxPerM;
  if (!overhead || lengthPx < 30 || path.length < 2) return;
  const [x, y] = toPx(view, pointAtStation(path, figures.chordM / 2).point);
  disc(ctx, x, y, 4);
  ctx.fillStyle = palette.paper;
  ctx.fill();
  ctx.lineWidth = 1.4;
  ctx.stroke();
}

/** Insulated cable from an energiser to the fence. */
export function paintLeadOuts({ ctx, view, palette, linePx }: Look, parts: readonly LeadOutPart[]): void {
  for (const { leadOut, xy } of parts) {
    ctx.beginPath();
    tracePlanePath(ctx, view, xy);
    ctx.lineJoin = 'round';
    ctx.lineCap = 'butt';
    const built = leadOut.status === 'built';
    ctx.setLineDash(leadOut.buried ? (built ? buriedDash : plannedDash) : []);
    ctx.strokeStyle = palette.ink;
    ctx.lineWidth = built ? linePx : Math.max(1, linePx * 0.55);
    ctx.stroke();
    ctx.setLineDash([]);
  }
}
