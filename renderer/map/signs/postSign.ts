import type { Post } from '../../../core/model/things.ts';
import type { Px } from '../plane/view.ts';
import { disc, type Pen } from './pen.ts';

/** A post that does not move: a square for a strainer, a lozenge at an angle, a disc for any other. */
export function drawPost({ ctx, palette, scale }: Pen, [x, y]: Px, role: Post['role']): void {
  const r = 5 * Math.max(0.6, scale);
  if (role === 'strainer') {
    ctx.beginPath();
    ctx.rect(x - r, y - r, 2 * r, 2 * r);
  } else if (role === 'angle') {
    const d = r * 1.3;
    ctx.beginPath();
    ctx.moveTo(x, y - d);
    ctx.lineTo(x + d, y);
    ctx.lineTo(x, y + d);
    ctx.lineTo(x - d, y);
    ctx.closePath();
  } else disc(ctx, x, y, r * 0.9);
  ctx.fillStyle = palette.ink;
  ctx.fill();
  ctx.strokeStyle = palette.paper;
  ctx.lineWidth = 1.5;
  ctx.stroke();
}
