import { levelFor, pyramidOf, type TileKey, tileExtent, tilePx } from '../../../core/exchange/image/pyramid.ts';
import { boxAround } from '../../../core/geometry/box.ts';
import type { LocalPlane } from '../../../core/geometry/localPlane.ts';
import { type PictureMap, pictureMap } from '../../../core/geometry/picture/pictureMap.ts';
import type { PictureSource, Placement, Underlay } from '../../../core/model/underlayThings.ts';
import type { Sheet, SheetLook } from './sheet.ts';
import type { TileSupply } from './types.ts';

/** A picture in the project file, laid down as it is placed. */
export function pictureSheet(
  { id, opacity }: Underlay,
  source: PictureSource,
  placement: Placement,
  plane: LocalPlane,
  supply: TileSupply,
): Sheet {
  const pyramid = pyramidOf(source.widthPx, source.heightPx);
  const map = pictureMap(placement, source, plane);
  const coarsest = pyramid.levels.length - 1;
  const { imageId } = source;

  function tileOf(key: TileKey) {
    const { level, column, row } = key;
    return {
      key: `${imageId}/${level}/${column}/${row}`,
      load: () => supply.picture({ imageId, ...key }),
      extent: tileExtent(pyramid, key),
      toXy: map.toXy,
    };
  }

  return {
    id,
    opacity,
    tilesFor(look) {
      const seen = seenPixels(map, look);
      if (!seen) return [];
      const finest = levelFor(pyramid, map.metresPerPixel * look.screenPxPerM);
      const tiles: { tile: ReturnType<typeof tileOf>; wanted: boolean }[] = [];
      for (let level = coarsest; level >= finest; level--) {
        const wanted = level === finest || level === coarsest;
        const { columns, rows } = pyramid.levels[level]!;
        const side = tilePx * 2 ** level;
        const last = (edge: number, count: number) => Math.min(count - 1, Math.floor(edge / side));
        for (let row = Math.max(0, Math.floor(seen[1] / side)); row <= last(seen[3], rows); row++) {
          for (let column = Math.max(0, Math.floor(seen[0] / side)); column <= last(seen[2], columns); column++) {
            tiles.push({ tile: tileOf({ level, column, row }), wanted });
          }
        }
      }
      return tiles;
    },
  };
}

/** The box of the picture's pixels that the view shows; null where it shows none. */
function seenPixels({ toPixel }: PictureMap, { outline }: SheetLook) {
  const box = boxAround(outline.map(toPixel));
  return box?.every(Number.isFinite) ? box : null;
}
