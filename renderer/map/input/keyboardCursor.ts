import type L from 'leaflet';
import type { Xy } from '../../../core/geometry/types.ts';
import { toLatLng } from '../leaflet/planeMap.ts';

/** The keyboard's pointer: a cross that the arrow keys move. */
export interface Cross {
  at(): Xy | null;
  hide(): void;
  moveTo(xy: Xy): void;
  /** True where the key moved the cross; it begins where the pointer last was, or in the middle. */
  key(event: KeyboardEvent, begin: Xy | null): boolean;
}

const stepPx = 12;
const farStepPx = 60;
const fineStepPx = 1;
/** Nearer to an edge than this the map comes along. */
const edgePx = 60;

const directions: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};

export function createCross(map: L.Map, onMove: (xy: Xy) => void): Cross {
  let at: Xy | null = null;

  function moveTo(xy: Xy): void {
    at = xy;
    keepInView(xy);
    onMove(xy);
  }

  function keepInView(xy: Xy): void {
    const size = map.getSize();
    const { x, y } = map.latLngToContainerPoint(toLatLng(xy));
    const over = (place: number, room: number) => Math.min(0, place - edgePx) + Math.max(0, place - room + edgePx);
    const [dx, dy] = [over(x, size.x), over(y, size.y)];
    if (dx !== 0 || dy !== 0) map.panBy([dx, dy], { animate: false });
  }

  return {
    at: () => at,
    hide() {
      at = null;
    },
    moveTo,
    key(event, begin) {
      const direction = directions[event.key];
      if (!direction) return false;
      const start = at ?? (begin && isInView(map, begin) ? begin : middleOf(map));
      const px = event.ctrlKey ? fineStepPx : event.shiftKey ? farStepPx : stepPx;
      const stepM = px / 2 ** map.getZoom();
      // The first press only shows where the cross is.
      moveTo(at ? [start[0] + direction[0] * stepM, start[1] - direction[1] * stepM] : start);
      return true;
    },
  };
}

function middleOf(map: L.Map): Xy {
  const { lat, lng } = map.getCenter();
  return [lng, lat];
}

function isInView(map: L.Map, xy: Xy): boolean {
  return map.getBounds().contains(toLatLng(xy));
}
