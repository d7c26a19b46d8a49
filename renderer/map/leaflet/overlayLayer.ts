import type L from 'leaflet';
import type { View } from '../plane/view.ts';
import { createPicture } from './pictureLayer.ts';
import { interactionPane, viewOf } from './planeMap.ts';

export interface OverlayLayer {
  /** To be drawn again with the next frame. */
  invalidate(): void;
  remove(): void;
}

/** What belongs to the hand: handles, cues, the line being drawn. One canvas as large as the map, drawn whole in a frame. */
export function createOverlayLayer(
  map: L.Map,
  paint: (ctx: CanvasRenderingContext2D, view: View) => void,
): OverlayLayer {
  const picture = createPicture(map, map.getPane(interactionPane)!);
  let frame = 0;
  let removed = false;

  function draw(): void {
    frame = 0;
    const view = viewOf(map);
    picture.begin(view);
    picture.place();
    paint(picture.ctx, view);
  }
  function invalidate(): void {
    if (!removed && frame === 0) frame = requestAnimationFrame(draw);
  }
  const onZoomAnim = ({ center, zoom }: L.ZoomAnimEvent) => picture.placeFor(center, zoom);
  map.on('zoomanim', onZoomAnim);
  map.on('move zoom viewreset moveend resize', invalidate);

  return {
    invalidate,
    remove() {
      removed = true;
      cancelAnimationFrame(frame);
      map.off('zoomanim', onZoomAnim);
      map.off('move zoom viewreset moveend resize', invalidate);
      picture.canvas.remove();
    },
  };
}
