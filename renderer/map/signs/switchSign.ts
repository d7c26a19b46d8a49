import type { Px } from '../plane/view.ts';
import { at, disc, line, type Pen, strokePx } from './pen.ts';

/** Reach of the sign on either side of its place, pixels at full scale. */
export const switchReachPx = 10;

/**
 * A cut-out switch after the contact of IEC 60617: two terminals and a blade that lies across them (closed) or stands
 * off (open). `angle` points from the supply side to the far side; the blade hangs on the supply side.
 */
export function drawSwitch(pen: Pen, place: Px, angle: number, stands: 'closed' | 'open'): void {
  const { ctx, palette, scale } = pen;
  const reach = switchReachPx * scale;
  const terminal = Math.max(1.8, 3 * scale);
  at(ctx, place, angle, () => {
    ctx.fillStyle = palette.paper;
    ctx.fillRect(-reach, -terminal - 2, 2 * reach, 2 * terminal + 4);
    ctx.strokeStyle = palette.ink;
    ctx.lineWidth = strokePx(pen);
    ctx.lineCap = 'round';
    const bladePx = 2 * reach - terminal;
    const tilt = stands === 'open' ? -Math.PI / 5 : 0;
    const lift = stands === 'closed' ? -terminal : 0;
    line(ctx, -reach, lift, -reach + bladePx * Math.cos(tilt), lift + bladePx * Math.sin(tilt));
    for (const x of [-reach, reach]) {
      disc(ctx, x, 0, terminal);
      ctx.fillStyle = pen.built ? palette.ink : palette.paper;
      ctx.fill();
      ctx.lineWidth = 1.4;
      ctx.stroke();
    }
  });
}

/** A switch that the plan asks for and nobody has drawn yet: hollow, with a plus. */
export function drawSuggestedSwitch(pen: Pen, [x, y]: Px): void {
  const { ctx, palette, scale } = pen;
  const radius = 11 * Math.max(0.7, scale);
  disc(ctx, x, y, radius);
  ctx.fillStyle = palette.paper;
  ctx.fill();
  ctx.strokeStyle = palette.accent;
  ctx.lineWidth = 2;
  ctx.setLineDash([4, 3]);
  ctx.stroke();
  ctx.setLineDash([]);
  line(ctx, x - radius / 2, y, x + radius / 2, y);
  line(ctx, x, y - radius / 2, x, y + radius / 2);
}

/** Struck through: drawn, but the plan does without it. */
export function drawSurplusMark(pen: Pen, [x, y]: Px): void {
  const { ctx, palette, scale } = pen;
  const reach = 13 * Math.max(0.7, scale);
  ctx.strokeStyle = palette.caution;
  ctx.lineWidth = 2;
  line(ctx, x - reach, y + reach, x + reach, y - reach);
}
