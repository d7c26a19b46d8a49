import type { LonLat } from '../types.ts';

/** Side of the square that the tiles of zoom 0 cover, in that square's own units: one. */
const degrees = 180 / Math.PI;

/**
 * Tiles of the spherical ("web") Mercator map, EPSG:3857: at zoom z the world is 2^z tiles wide and high, column 0 at 180
 * west and row 0 in the north. `[0, 0]` to `[1, 1]` spans the tile. Latitude is on WGS 84, as the maps' makers use it.
 */
export function lonLatInTile(zoom: number, column: number, row: number, [u, v]: readonly [number, number]): LonLat {
  const count = 2 ** zoom;
  const lon = ((column + u) / count) * 360 - 180;
  const lat = Math.atan(Math.sinh(Math.PI * (1 - (2 * (row + v)) / count))) * degrees;
  return [lon, lat];
}

/** Column and row, with fractions, of a place at a zoom. */
export function tilePlaceOf(zoom: number, [lon, lat]: LonLat): readonly [number, number] {
  const count = 2 ** zoom;
  const limited = Math.max(-85.05112877980659, Math.min(85.05112877980659, lat)) / degrees;
  const y = (1 - Math.asinh(Math.tan(limited)) / Math.PI) / 2;
  return [((lon + 180) / 360) * count, y * count];
}

/** Row of a tile in MBTiles 1.3, which counts from the south (TMS), from its row from the north; and back. */
export function rowFromSouth(zoom: number, row: number): number {
  return 2 ** zoom - 1 - row;
}

/** Metres on the ground for one pixel of a 256-pixel tile there. */
export function metresPerTilePixel(zoom: number, lat: number): number {
  return (40_075_016.686 * Math.cos(lat / degrees)) / 2 ** zoom / 256;
}
