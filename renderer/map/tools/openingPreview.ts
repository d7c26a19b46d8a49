import type { Xy } from '../../../core/geometry/types.ts';
import type { Gateway } from '../../../core/model/things.ts';
import { xyAt, xySlice } from '../../../core/shapes/measuredPath.ts';
import type { LineShape } from '../../../core/shapes/types.ts';
import { paintItems } from '../canvas/paintItems.ts';
import { markedPen } from '../plane/screenPen.ts';
import { toPx } from '../plane/view.ts';
import { gateSignFor } from '../staticLayer/drawSigns.ts';
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
  const [start, end] = [fromM, toM].map((stationM) => toPx(view, xyAt(shape, stationM)));
  const sign = gateSignFor(start!, end!, { ...gateway, status: 'built' }, markedPen(palette));
  paintItems(ctx, sign.items);
  return xyAt(shape, atM);
}
