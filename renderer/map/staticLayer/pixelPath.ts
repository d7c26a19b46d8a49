import type { Xy } from '../../../core/geometry/types.ts';
import type { Px, View } from '../plane/view.ts';

/** Vertices nearer than this to the one before add nothing to a drawn line. */
const leastStepPx = 0.7;

/** A path in pixels without the vertices that fall on the one before; its ends always stay. */
export function pixelPath(view: View, path: readonly Xy[]): Px[] {
  const { westM, northM, pxPerM } = view;
  const pixels: Px[] = [];
  let [lastX, lastY] = [Infinity, Infinity];
  for (let i = 0; i < path.length; i++) {
    const x = (path[i]![0] - westM) * pxPerM;
    const y = (northM - path[i]![1]) * pxPerM;
    if (i > 0 && i < path.length - 1 && Math.abs(x - lastX) < leastStepPx && Math.abs(y - lastY) < leastStepPx) {
      continue;
    }
    pixels.push([x, y]);
    lastX = x;
    lastY = y;
  }
  return pixels;
}

/** Adds a path to the context's current one; the same as tracing `pixelPath`, without making it. */
export function tracePlanePath(ctx: CanvasRenderingContext2D, view: View, path: readonly Xy[]): void {
  const { westM, northM, pxPerM } = view;
  let [lastX, lastY] = [0, 0];
  for (let i = 0; i < path.length; i++) {
    const x = (path[i]![0] - westM) * pxPerM;
    const y = (northM - path[i]![1]) * pxPerM;
    if (i === 0) ctx.moveTo(x, y);
    else if (i < path.length - 1 && Math.abs(x - lastX) < leastStepPx && Math.abs(y - lastY) < leastStepPx) {
      continue;
    } else ctx.lineTo(x, y);
    lastX = x;
    lastY = y;
  }
}
