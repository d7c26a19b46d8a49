import L from 'leaflet';
import type { Box } from '../../../core/geometry/box.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import type { View } from '../plane/view.ts';

/**
 * Leaflet over the working plane: CRS.Simple with one unit for one metre, so that `lat` is y (north) and `lng` is x
 * (east), and zoom z shows a metre as 2^z pixels.
 */
export const toLatLng = ([x, y]: Xy): L.LatLng => L.latLng(y, x);

const zoomOf = (pxPerM: number): number => Math.log2(pxPerM);

/** From more than 100 km across a small window to less than 10 m across a large one. */
const minZoom = zoomOf(400 / 200_000);
const maxZoom = zoomOf(2000 / 8);

export const underlayPane = 'underlay';
export const staticPane = 'static';
export const interactionPane = 'interaction';

/** The bare map. Keys, clicks and boxes are the tools' business; Leaflet pans, wheels and pinches. */
export function createPlaneMap(container: HTMLElement): L.Map {
  const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
  const map = L.map(container, {
    crs: L.CRS.Simple,
    center: [0, 0],
    zoom: 0,
    minZoom,
    maxZoom,
    zoomSnap: 0,
    zoomDelta: 1,
    wheelPxPerZoomLevel: 110,
    keyboard: false,
    boxZoom: false,
    doubleClickZoom: false,
    zoomControl: false,
    attributionControl: false,
    zoomAnimation: !still,
    fadeAnimation: !still,
    inertia: !still,
  });
  for (const [name, order] of [
    [underlayPane, '250'],
    [staticPane, '400'],
    [interactionPane, '500'],
  ] as const) {
    const pane = map.createPane(name);
    pane.style.zIndex = order;
    pane.style.pointerEvents = 'none';
  }
  return map;
}

/** What the map shows now, with a margin of pixels around it. */
export function viewOf(map: L.Map, marginPx = 0): View {
  const size = map.getSize();
  const corner = map.containerPointToLatLng([-marginPx, -marginPx]);
  return {
    westM: corner.lng,
    northM: corner.lat,
    pxPerM: 2 ** map.getZoom(),
    widthPx: size.x + 2 * marginPx,
    heightPx: size.y + 2 * marginPx,
  };
}

/** Shows a box of the plane with some room around it, never nearer than `leastM` across. */
export function showBox(map: L.Map, [west, south, east, north]: Box, leastM: number, animate: boolean): void {
  const size = map.getSize();
  const roomX = Math.max(40, size.x - 160);
  const roomY = Math.max(40, size.y - 130);
  const wide = Math.max(east - west, leastM);
  const high = Math.max(north - south, (leastM * roomY) / roomX);
  const zoom = Math.min(maxZoom, Math.max(minZoom, zoomOf(Math.min(roomX / wide, roomY / high))));
  map.setView(toLatLng([(west + east) / 2, (south + north) / 2]), zoom, { animate });
}
