import type { MapId, MapInput } from '../mapTypes.ts';
import { toPx } from '../plane/view.ts';
import type { Scene } from '../scene/buildScene.ts';
import type { Part } from '../scene/parts.ts';
import { partsFor } from '../scene/partsFor.ts';
import { switchSignXy } from '../scene/switchSignXy.ts';
import { tracePlanePath } from '../staticLayer/pixelPath.ts';
import type { PaintTools } from '../tools/tool.ts';
import { drawHalo, drawHaloAt } from './cues.ts';

const widest = 13;

/** Glows over what is chosen (widest), the pieces of a figure, and what is pointed at. */
export function paintMarked(tools: PaintTools, scene: Scene, input: MapInput): void {
  const done = new Set<MapId>();
  const paint = (id: MapId, widthPx: number) => {
    if (done.has(id)) return;
    done.add(id);
    const { parts, places } = partsFor(scene, input, id);
    for (const part of parts) paintPart(tools, part, widthPx);
    for (const place of places) drawHaloAt(tools, place, 17);
  };
  for (const id of input.chosen) paint(id, widest);
  for (const id of input.lit) paint(id, widest - 2);
  if (input.pointed) paint(input.pointed, widest - 4);
}

function paintPart(tools: PaintTools, part: Part, widthPx: number): void {
  const { ctx, view, palette } = tools;
  switch (part.kind) {
    case 'piece':
    case 'leadOut':
    case 'service':
      if (part.xy.length > 1) drawHalo(tools, part.xy, widthPx);
      else if (part.xy[0]) drawHaloAt(tools, part.xy[0], 15);
      break;
    case 'crossing':
      drawHalo(tools, part.figures.path, widthPx);
      break;
    case 'inGround': {
      const { path, ways } = part.left;
      for (const way of ways) if (way.length > 1) drawHalo(tools, way, widthPx);
      if (path[0]) drawHaloAt(tools, path[path.length >> 1]!, 17);
      break;
    }
    case 'gateway': {
      const { startPost, endPost, centre } = part.shape;
      const [ax, ay] = toPx(view, startPost);
      const [bx, by] = toPx(view, endPost);
      const wide = Math.hypot(bx - ax, by - ay) > 30;
      if (wide) drawHalo(tools, [startPost, endPost], widthPx + 4);
      else drawHaloAt(tools, centre, 15);
      break;
    }
    case 'switch':
      drawHaloAt(tools, switchSignXy(part, view.pxPerM), 17);
      break;
    case 'paddock':
      ctx.beginPath();
      tracePlanePath(ctx, view, part.paddock.ring);
      ctx.closePath();
      for (const hole of part.paddock.holes) {
        tracePlanePath(ctx, view, hole);
        ctx.closePath();
      }
      // Only a chosen one is tinted: pointing at empty ground must not make it flicker.
      if (widthPx === widest) {
        ctx.fillStyle = palette.paddockTint;
        ctx.fill('evenodd');
      }
      ctx.strokeStyle = palette.accent;
      ctx.lineWidth = 2;
      ctx.setLineDash([2, 5]);
      ctx.stroke();
      ctx.setLineDash([]);
      break;
    default:
      drawHaloAt(tools, part.xy, 17);
  }
}
