import { nearestOnPolyline } from '../../../core/geometry/polyline.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { stationOf } from '../../../core/shapes/measuredPath.ts';
import type { LineShape } from '../../../core/shapes/types.ts';
import type { Scene } from '../scene/buildScene.ts';

export interface PlaceOnLine {
  readonly shape: LineShape;
  readonly point: Xy;
  readonly atM: number;
  readonly distanceM: number;
  readonly side: 'left' | 'right' | null;
}

/** The place on a line nearest to a point. */
export function placeOnLine(shape: LineShape, at: Xy): PlaceOnLine | null {
  const near = nearestOnPolyline(at, shape.xy);
  if (!near || shape.xy.length < 2) return null;
  const { point, distanceM, side } = near;
  return { shape, point, atM: stationOf(shape, near), distanceM, side };
}

/** The nearest place within reach on any fence line. */
export function nearestLine(scene: Scene, at: Xy, reachM: number): PlaceOnLine | null {
  const [x, y] = at;
  const shapes = new Set<LineShape>();
  for (const part of scene.search([x - reachM, y - reachM, x + reachM, y + reachM])) {
    if (part.kind === 'piece') shapes.add(part.shape);
    // The opening of a gateway has no piece, and belongs to its line all the same.
    else if (part.kind === 'gateway') {
      const shape = scene.survey.lines.get(part.shape.gateway.lineId);
      if (shape) shapes.add(shape);
    }
  }
  let best: PlaceOnLine | null = null;
  for (const shape of shapes) {
    const place = placeOnLine(shape, at);
    if (place && place.distanceM <= reachM && (!best || place.distanceM < best.distanceM)) best = place;
  }
  return best;
}
