import type { Stroke, TracesItem } from '../../../core/drawing/displayList.ts';
import { createTraces } from '../../../core/drawing/traces.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import type { Px, View } from '../plane/view.ts';

/** Vertices nearer than this to the one before add nothing to a drawn line. */
const leastStepPx = 0.7;

/** Calls `add` for each vertex of a path that makes a difference on the screen, in pixels; its ends always. */
function eachPixel({ westM, northM, pxPerM }: View, path: readonly Xy[], add: (x: number, y: number) => void): void {
  let [lastX, lastY] = [Infinity, Infinity];
  for (let i = 0; i < path.length; i++) {
    const x = (path[i]![0] - westM) * pxPerM;
    const y = (northM - path[i]![1]) * pxPerM;
    if (i > 0 && i < path.length - 1 && Math.abs(x - lastX) < leastStepPx && Math.abs(y - lastY) < leastStepPx) {
      continue;
    }
    add(x, y);
    lastX = x;
    lastY = y;
  }
}

/** A path in pixels without the vertices that fall on the one before; its ends always stay. */
export function pixelPath(view: View, path: readonly Xy[]): Px[] {
  const pixels: Px[] = [];
  eachPixel(view, path, (x, y) => pixels.push([x, y]));
  return pixels;
}

/** Some paths as one item, with no object for a vertex. */
export function pixelTraces(view: View, paths: Iterable<readonly Xy[]>, stroke: Stroke): TracesItem {
  const traces = createTraces();
  for (const path of paths) {
    traces.begin();
    eachPixel(view, path, traces.add);
  }
  return traces.done(stroke);
}

/** Adds a path to the context's current one. */
export function tracePlanePath(ctx: CanvasRenderingContext2D, view: View, path: readonly Xy[]): void {
  let begun = false;
  eachPixel(view, path, (x, y) => {
    if (begun) ctx.lineTo(x, y);
    else ctx.moveTo(x, y);
    begun = true;
  });
}
