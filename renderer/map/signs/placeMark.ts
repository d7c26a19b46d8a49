import type { Px } from '../plane/view.ts';
import { at, line, type Pen, strokePx } from './pen.ts';

/** A place where the user lets the plan set a switch: two short strokes across the fence. `angle` is the fence's. */
export function drawPlaceMark(pen: Pen, place: Px, angle: number): void {
  const { ctx, palette, scale } = pen;
  const reach = 8 * Math.max(0.7, scale);
  at(ctx, place, angle, () => {
    ctx.strokeStyle = palette.ink;
    ctx.lineWidth = strokePx(pen);
    for (const x of [-3, 3]) line(ctx, x, -reach, x, reach);
  });
}
