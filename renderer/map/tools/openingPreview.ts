import type { Xy } from '../../../core/geometry/types.ts';
import type { Gateway } from '../../../core/model/things.ts';
import { xyAt, xySlice } from '../../../core/shapes/measuredPath.ts';
import type { LineShape } from '../../../core/shapes/types.ts';
import { toPx } from '../plane/view.ts';
import { drawGate } from '../signs/gateSign.ts';
import { tracePlanePath } from '../staticLayer/pixelPath.ts';
import type { PaintTools } from './tool.ts';

/** Draws a gateway that is being placed or dragged; gives back its centre. */
export function drawOpening(
  { ctx, view, palette }: PaintTools,
  shape: LineShape,
  atM: number,
  widthM: number,
  gateway: Pick<Gateway, 'leaves' | 'hungFrom' | 'opens'>,
): Xy {
  const [fromM, toM] = [Math.max(0, atM - widthM / 2), Math.min(shape.lengthM, atM + widthM / 2)];
  ctx.beginPath();
  tracePlanePath(ctx, view, xySlice(shape, fromM, toM));
  ctx.strokeStyle = palette.paper;
  ctx.lineWidth = 7;
  ctx.lineCap = 'butt';
  ctx.stroke();
  const pen = { ctx, palette: { ...palette, ink: palette.accent }, scale: 1, built: true };
  drawGate(pen, toPx(view, xyAt(shape, fromM)), toPx(view, xyAt(shape, toM)), gateway);
  return xyAt(shape, atM);
}
