/** A tile of a picture in the project file; levels as in `core/exchange/image/pyramid.ts`. */
export interface PictureTileKey {
  readonly imageId: string;
  readonly level: number;
  readonly column: number;
  readonly row: number;
}

export interface PictureTile extends Omit<PictureTileKey, 'imageId'> {
  /** A JPEG or WebP picture. */
  readonly bytes: Uint8Array;
}

/** What an MBTiles file says of itself. */
export interface TileFileFacts {
  readonly path: string;
  readonly name: string;
  readonly fileName: string;
  readonly minZoom: number;
  readonly maxZoom: number;
  /** West, south, east, north in degrees. */
  readonly bounds: readonly [number, number, number, number];
  /** Who made the map, as the file asks to be shown; plain text. */
  readonly attribution: string;
}

export interface PictureProgress {
  readonly tilesDone: number;
  readonly tilesInAll: number;
}

/** The most tiles, and bytes of one tile, that may come in one message. */
export const pictureLimits = { tilesAtOnce: 64, tileBytes: 8 * 1024 * 1024 };
