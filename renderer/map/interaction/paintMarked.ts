import type { MapId, MapInput } from '../mapTypes.ts';
import { toPx } from '../plane/view.ts';
import type { Scene } from '../scene/buildScene.ts';
import type { Part } from '../scene/parts.ts';
import { partsFor } from '../scene/partsFor.ts';
import { tracePlanePath } from '../settled/pixelPath.ts';
import type { PaintTools } from '../tools/tool.ts';
import { drawHalo, drawHaloAt } from './cues.ts';

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
  for (const id of input.chosen) paint(id, 13);
  for (const id of input.lit) paint(id, 11);
  if (input.pointed) paint(input.pointed, 9);
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
    case 'gateway': {
      const { startPost, endPost, centre } = part.shape;
      const [ax, ay] = toPx(view, startPost);
      const [bx, by] = toPx(view, endPost);
      drawHaloAt(tools, centre, Math.max(14, Math.hypot(bx - ax, by - ay) * 0.62));
      break;
    }
    case 'switch':
      drawHaloAt(tools, part.row.xy, 17);
      break;
    case 'paddock':
      ctx.beginPath();
      tracePlanePath(ctx, view, part.paddock.ring);
      ctx.closePath();
      for (const hole of part.paddock.holes) {
        tracePlanePath(ctx, view, hole);
        ctx.closePath();
      }
      ctx.fillStyle = palette.paddockTint;
      ctx.fill('evenodd');
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
