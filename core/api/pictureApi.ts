import type { Edit, FileState } from './projectApi.ts';
import type { Result } from './result.ts';

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

/**
 * The part of `ProjectApi` that is about maps and pictures under the drawing. A picture comes in tile by tile and is in the
 * file when `finishPicture` has answered, with the thing that shows it; before that, or after `dropPicture`, there is nothing of it.
 */
export interface PictureApi {
  /** Begins to bring a picture in. A picture that was begun before and not finished is given up. */
  beginPicture(request: {
    readonly fileName: string;
    readonly widthPx: number;
    readonly heightPx: number;
  }): Promise<Result<{ readonly imageId: string }>>;
  addPictureTiles(request: {
    readonly imageId: string;
    readonly tiles: readonly PictureTile[];
  }): Promise<Result<PictureProgress>>;
  /** Takes the picture into the file and makes the edit that lays it under the drawing: one step of undo. */
  finishPicture(request: { readonly imageId: string; readonly edit: Edit }): Promise<Result<FileState>>;
  dropPicture(request: { readonly imageId: string }): Promise<Result<null>>;
  /** The tile's bytes; null where there is none. */
  pictureTile(request: PictureTileKey): Promise<Result<Uint8Array | null>>;

  /**
   * Looks into an MBTiles file; it stays where it is and is never written to. `chosen`: the user chose it here and now,
   * which is remembered on this machine. One that was never chosen, and does not lie with the property's file, is not touched:
   * `ask-first`. One that does not answer in time is given up until it is chosen again.
   */
  openTileFile(request: { readonly path: string; readonly chosen: boolean }): Promise<Result<TileFileFacts>>;
  /** A tile of it, rows counted from the north; null where there is none. Opens it if need be, as not chosen. */
  tileFileTile(request: {
    readonly path: string;
    readonly zoom: number;
    readonly column: number;
    readonly row: number;
  }): Promise<Result<Uint8Array | null>>;
}

/** The most tiles, and bytes of one tile, that may come in one message. */
export const pictureLimits = { tilesAtOnce: 64, tileBytes: 8 * 1024 * 1024 };
