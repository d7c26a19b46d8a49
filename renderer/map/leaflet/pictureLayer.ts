import L from 'leaflet';
import type { View } from '../plane/view.ts';
import { toLatLng } from './planeMap.ts';

/** A canvas that shows a `View` of the plane and stays in its place on the map while the map pans and zooms. */
export interface Picture {
  readonly canvas: HTMLCanvasElement;
  readonly ctx: CanvasRenderingContext2D;
  /** Makes the canvas as large as `view`, clears it and puts it where it belongs. */
  begin(view: View): void;
  /** Puts the canvas where its view lies on the map as it stands. */
  place(): void;
  /** Puts it where its view will lie at the end of a zoom that begins now. */
  placeFor(center: L.LatLng, zoom: number): void;
}

export function createPicture(map: L.Map, pane: HTMLElement): Picture {
  const canvas = L.DomUtil.create('canvas', 'leaflet-zoom-animated', pane);
  canvas.setAttribute('aria-hidden', 'true');
  const ctx = canvas.getContext('2d')!;
  let view: View | null = null;

  const corner = () => toLatLng([view!.westM, view!.northM]);
  const put = (offset: L.Point, zoom: number) => {
    L.DomUtil.setTransform(canvas, offset, 2 ** zoom / view!.pxPerM);
  };

  return {
    canvas,
    ctx,
    begin(next) {
      view = next;
      const ratio = window.devicePixelRatio || 1;
      const [width, height] = [Math.round(next.widthPx * ratio), Math.round(next.heightPx * ratio)];
      // Setting a canvas's size clears it and forgets its state, at the price of a new buffer; so only when needed.
      if (canvas.width !== width || canvas.height !== height) {
        canvas.width = width;
        canvas.height = height;
        canvas.style.width = `${next.widthPx}px`;
        canvas.style.height = `${next.heightPx}px`;
      } else ctx.reset();
      ctx.setTransform(ratio, 0, 0, ratio, 0, 0);
    },
    place() {
      if (view) put(map.latLngToLayerPoint(corner()), map.getZoom());
    },
    placeFor(center, zoom) {
      if (!view) return;
      const half = map.getSize().divideBy(2);
      const origin = map
        .project(center, zoom)
        .subtract(half)
        .add(L.DomUtil.getPosition(map.getPane('mapPane')!));
      put(map.project(corner(), zoom).subtract(origin.round()), zoom);
    },
  };
}
