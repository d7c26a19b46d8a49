import type { Px } from '../plane/view.ts';
import { at, disc, line, type Pen, strokePx } from './pen.ts';

/** The energiser: a source after IEC 60617, a circle, with the pulse it sends. */
export function drawSource(pen: Pen, [x, y]: Px): void {
  const { ctx, palette, scale } = pen;
  const radius = 14 * Math.max(0.7, scale);
  disc(ctx, x, y, radius);
  ctx.fillStyle = pen.built ? palette.ink : palette.paper;
  ctx.fill();
  ctx.strokeStyle = palette.ink;
  ctx.lineWidth = strokePx(pen);
  ctx.stroke();
  ctx.strokeStyle = pen.built ? palette.paper : palette.ink;
  ctx.lineJoin = 'miter';
  const [wide, tall] = [radius * 0.6, radius * 0.4];
  ctx.beginPath();
  ctx.moveTo(x - wide, y + tall);
  ctx.lineTo(x - wide / 3, y + tall);
  ctx.lineTo(x - wide / 3, y - tall);
  ctx.lineTo(x + wide / 3, y - tall);
  ctx.lineTo(x + wide / 3, y + tall);
  ctx.lineTo(x + wide, y + tall);
  ctx.stroke();
}

/** Earth after IEC 60617: a stem over three bars, each shorter than the one above. */
export function drawEarth(pen: Pen, place: Px): void {
  const { ctx, palette } = pen;
  const s = Math.max(0.7, pen.scale);
  at(ctx, place, 0, () => {
    ctx.lineCap = 'butt';
    for (const [colour, weight] of [
      [palette.paper, strokePx(pen) + 3],
      [palette.ink, strokePx(pen)],
    ] as const) {
      ctx.strokeStyle = colour;
      ctx.lineWidth = weight;
      line(ctx, 0, -10 * s, 0, 0);
      line(ctx, -10 * s, 0, 10 * s, 0);
      line(ctx, -6.5 * s, 5 * s, 6.5 * s, 5 * s);
      line(ctx, -3 * s, 10 * s, 3 * s, 10 * s);
    }
  });
}
