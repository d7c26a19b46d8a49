import type { Item } from '../../../core/drawing/displayList.ts';
import { floodZone, serviceLine, servicePoint } from '../../../core/drawing/strokes/services.ts';
import { clipPolylineToBox } from '../../../core/geometry/polyline.ts';
import { toPx, viewBox } from '../plane/view.ts';
import type { ServicePart } from '../scene/parts.ts';
import type { Look } from './look.ts';
import { pixelPath } from './pixelPath.ts';

/** Lines are drawn this far beyond the picture, so that no dash or dot ends at its edge. */
const beyondPx = 20;

/** What else is there: pipes, lines, roads, water. */
export function drawServices(look: Look, parts: readonly ServicePart[]): Item[] {
  return parts.flatMap((part) => service(look, part));
}

function service({ view, pen }: Look, { service: { what, buried }, xy }: ServicePart): readonly Item[] {
  const first = xy[0];
  if (!first) return [];
  if (xy.length === 1) return servicePoint(what, toPx(view, first), pen);
  const box = [-beyondPx, -beyondPx, view.widthPx + beyondPx, view.heightPx + beyondPx] as const;
  if (what === 'floodZone') {
    return floodZone(pixelPath(view, xy), box, (path) => clipPolylineToBox(path, box), pen);
  }
  return clipPolylineToBox(xy, viewBox(view, beyondPx)).flatMap((piece) =>
    serviceLine({ what, buried }, pixelPath(view, piece), pen),
  );
}
