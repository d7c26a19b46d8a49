import type { Gateway } from '../../../core/model/things.ts';
import type { Px } from '../plane/view.ts';
import { at, line, type Pen, strokePx } from './pen.ts';

/** Openings narrower than this on the screen get a tick instead of a gate. */
const leastTruePx = 11;

/**
 * A gateway in plan, true to scale: two posts with a gap, each leaf standing open at a right angle, and the quarter
 * arc of its swing. From afar a bar across the fence.
 */
export function drawGate(pen: Pen, start: Px, end: Px, gateway: Pick<Gateway, 'leaves' | 'hungFrom' | 'opens'>): void {
  const widthPx = Math.hypot(end[0] - start[0], end[1] - start[1]);
  const angle = Math.atan2(end[1] - start[1], end[0] - start[0]);
  if (widthPx < leastTruePx) {
    drawTick(pen, [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2], angle, widthPx);
    return;
  }
  at(pen.ctx, start, angle, () => {
    // The screen's y runs down, so the left hand of someone who looks along the fence is -y.
    const side = gateway.opens === 'left' ? -1 : 1;
    const { ctx, palette } = pen;
    ctx.strokeStyle = palette.ink;
    ctx.lineCap = 'butt';
    if (gateway.leaves === 2) {
      drawLeaf(pen, 0, 1, widthPx / 2, side);
      drawLeaf(pen, widthPx, -1, widthPx / 2, side);
    } else if (gateway.hungFrom === 'start') drawLeaf(pen, 0, 1, widthPx, side);
    else drawLeaf(pen, widthPx, -1, widthPx, side);
    for (const x of [0, widthPx]) drawGatePost(pen, x);
  });
}

/** One leaf hung at `x`, closing towards `towards` (1: to the right) and standing open on `side`. */
function drawLeaf(pen: Pen, x: number, towards: 1 | -1, leafPx: number, side: 1 | -1): void {
  const { ctx } = pen;
  ctx.lineWidth = strokePx(pen);
  line(ctx, x, 0, x, side * leafPx);
  ctx.lineWidth = 1;
  ctx.beginPath();
  const closed = towards === 1 ? 0 : Math.PI;
  const open = side === 1 ? Math.PI / 2 : -Math.PI / 2;
  ctx.arc(x, 0, leafPx, closed, open, towards !== side);
  ctx.stroke();
}

function drawGatePost(pen: Pen, x: number): void {
  const { ctx, palette, scale } = pen;
  const r = 3.5 * Math.max(0.7, scale);
  ctx.fillStyle = pen.built ? palette.ink : palette.paper;
  ctx.fillRect(x - r, -r, 2 * r, 2 * r);
  ctx.lineWidth = 1.4;
  ctx.strokeRect(x - r, -r, 2 * r, 2 * r);
}

/** From afar there are hundreds, so the canvas is not turned for each. */
function drawTick(pen: Pen, [x, y]: Px, angle: number, widthPx: number): void {
  const { ctx, palette, scale } = pen;
  const gap = Math.max(widthPx / 2, 3 * scale);
  const bar = 7 * scale;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  ctx.lineCap = 'butt';
  ctx.strokeStyle = palette.paper;
  ctx.lineWidth = 6;
  line(ctx, x - cos * gap, y - sin * gap, x + cos * gap, y + sin * gap);
  ctx.strokeStyle = palette.ink;
  ctx.lineWidth = strokePx(pen) * 0.8;
  ctx.beginPath();
  for (const along of [-gap, gap]) {
    ctx.moveTo(x + cos * along + sin * bar, y + sin * along - cos * bar);
    ctx.lineTo(x + cos * along - sin * bar, y + sin * along + cos * bar);
  }
  ctx.stroke();
}
