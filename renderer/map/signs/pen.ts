import type { Palette } from '../palette.ts';
import type { Px } from '../plane/view.ts';

export type Ctx = CanvasRenderingContext2D;

/** What a sign is drawn with. */
export interface Pen {
  readonly ctx: Ctx;
  readonly palette: Palette;
  /** 1 near, less from afar. */
  readonly scale: number;
  /** Built signs are filled and strong, planned ones hollow and thin. */
  readonly built: boolean;
}

/** Weight of a sign's strokes, pixels. */
export const strokePx = ({ built, scale }: Pen): number => (built ? 2.4 : 1.4) * Math.max(0.75, scale);

/** Runs `draw` with the origin at a place and the x axis along `angle` (radians, as the canvas turns). */
export function at(ctx: Ctx, [x, y]: Px, angle: number, draw: () => void): void {
  ctx.save();
  ctx.translate(x, y);
  ctx.rotate(angle);
  draw();
  ctx.restore();
}

export function line(ctx: Ctx, ax: number, ay: number, bx: number, by: number): void {
  ctx.beginPath();
  ctx.moveTo(ax, ay);
  ctx.lineTo(bx, by);
  ctx.stroke();
}

export function disc(ctx: Ctx, x: number, y: number, radius: number): void {
  ctx.beginPath();
  ctx.arc(x, y, radius, 0, 2 * Math.PI);
}

export function tracePath(ctx: Ctx, path: readonly Px[]): void {
  for (const [i, [x, y]] of path.entries()) {
    if (i === 0) ctx.moveTo(x, y);
    else ctx.lineTo(x, y);
  }
}
