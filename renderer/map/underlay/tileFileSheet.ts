import type { LocalPlane } from '../../../core/geometry/localPlane.ts';
import { lonLatInTile, metresPerTilePixel, tilePlaceOf } from '../../../core/geometry/picture/webMercator.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { largestOf, leastOf } from '../../../core/model/extremes.ts';
import type { TileFileSource, Underlay } from '../../../core/model/underlayThings.ts';
import { mostInView, type Sheet, type SheetLook, type SheetTile } from './sheet.ts';
import type { TileSupply } from './types.ts';

/** So many levels above the wanted one are drawn too, where they are at hand or where a file has gaps. */
const levelsAbove = 3;
/** Tiles have 256 pixels a side or more; one is looked at until it is this much larger than it was made. */
const mostStretch = 1.2;

/** An MBTiles file. A sheet's own units are tiles' sides, counted from each tile's upper left corner. */
export function tileFileSheet(
  { id, opacity }: Underlay,
  { path, minZoom, maxZoom, bounds }: TileFileSource,
  plane: LocalPlane,
  supply: TileSupply,
): Sheet {
  function tileOf(zoom: number, column: number, row: number): SheetTile {
    return {
      key: `${path}/${zoom}/${column}/${row}`,
      load: () => supply.tileFile({ path, zoom, column, row }),
      extent: [0, 0, 1, 1],
      toXy: (place: Xy) => plane.toXy(lonLatInTile(zoom, column, row, place)),
    };
  }

  return {
    id,
    opacity,
    tilesFor(look) {
      const seen = seenDegrees(look, plane, bounds);
      if (!seen) return [];
      const [west, south, east, north] = seen;
      const sharp = Math.ceil(
        Math.log2((metresPerTilePixel(0, (south + north) / 2) * look.screenPxPerM) / mostStretch),
      );
      const finest = Math.max(minZoom, Math.min(maxZoom, sharp));
      const tiles: { tile: SheetTile; wanted: boolean }[] = [];
      for (let zoom = Math.max(minZoom, finest - levelsAbove); zoom <= finest; zoom++) {
        const [left, top] = tilePlaceOf(zoom, [west, north]).map(Math.floor) as [number, number];
        const [right, bottom] = tilePlaceOf(zoom, [east, south]).map(Math.floor) as [number, number];
        const most = 2 ** zoom - 1;
        if ((right - left + 1) * (bottom - top + 1) > mostInView) continue;
        for (let row = Math.max(0, top); row <= Math.min(most, bottom); row++) {
          for (let column = Math.max(0, left); column <= Math.min(most, right); column++) {
            tiles.push({ tile: tileOf(zoom, column, row), wanted: zoom === finest || zoom === finest - 1 });
          }
        }
      }
      return tiles;
    },
  };
}

/** West, south, east, north of what the view shows of the map; null where it shows none of it. */
function seenDegrees({ outline }: SheetLook, plane: LocalPlane, bounds: TileFileSource['bounds']) {
  const places = outline.map((xy) => plane.toLonLat(xy));
  const [lons, lats] = [places.map(([lon]) => lon), places.map(([, lat]) => lat)];
  // Across the 180 meridian the view is taken as the whole width of the map.
  const across = largestOf(lons) - leastOf(lons) > 180;
  const west = Math.max(across ? -180 : leastOf(lons), bounds[0]);
  const east = Math.min(across ? 180 : largestOf(lons), bounds[2]);
  const south = Math.max(leastOf(lats), bounds[1]);
  const north = Math.min(largestOf(lats), bounds[3]);
  return west < east && south < north ? ([west, south, east, north] as const) : null;
}
