import type { ServiceKind } from '../../../core/model/things.ts';
import { toPx } from '../plane/view.ts';
import { isArea } from '../scene/partDistance.ts';
import type { ServicePart } from '../scene/parts.ts';
import { drawEarth } from '../signs/sourceSign.ts';
import { type Look, penOf } from './look.ts';
import { tracePlanePath } from './pixelPath.ts';

/** Weight and dashes of each kind of service line, pixels. Names stand beside them, so that nobody learns dashes by heart. */
const lines: Readonly<Record<ServiceKind, { readonly widthPx: number; readonly dash: readonly number[] }>> = {
  powerLine: { widthPx: 2, dash: [18, 4, 3, 4, 3, 4] },
  waterPipe: { widthPx: 1.8, dash: [12, 4] },
  gasPipe: { widthPx: 1.8, dash: [8, 3, 2, 3] },
  dataCable: { widthPx: 1.4, dash: [3, 3] },
  drain: { widthPx: 1.4, dash: [10, 3, 2, 3] },
  road: { widthPx: 6, dash: [] },
  path: { widthPx: 1.4, dash: [6, 4] },
  creek: { widthPx: 2.6, dash: [] },
  floodZone: { widthPx: 1.6, dash: [4, 6] },
  earthElectrode: { widthPx: 1, dash: [] },
};

/** What else is there: pipes, lines, roads, water. */
export function paintServices(look: Look, parts: readonly ServicePart[]): void {
  for (const part of parts) paintService(look, part);
  look.ctx.setLineDash([]);
}

function paintService(look: Look, { service, xy }: ServicePart): void {
  const { ctx, view, palette } = look;
  const first = xy[0];
  if (xy.length === 1 && first) {
    drawEarth(penOf(look, 'built'), toPx(view, first));
    return;
  }
  const { widthPx, dash } = lines[service.what];
  ctx.beginPath();
  tracePlanePath(ctx, view, xy);
  if (isArea(xy)) {
    ctx.fillStyle = palette.service;
    ctx.globalAlpha = 0.12;
    ctx.fill();
    ctx.globalAlpha = 1;
  }
  ctx.setLineDash([...dash]);
  ctx.lineCap = 'butt';
  ctx.lineJoin = 'round';
  ctx.strokeStyle = palette.service;
  ctx.lineWidth = widthPx;
  ctx.stroke();
  if (service.what !== 'road') return;
  // A road is two edges with the way between.
  ctx.strokeStyle = palette.paper;
  ctx.lineWidth = widthPx - 3;
  ctx.stroke();
}
