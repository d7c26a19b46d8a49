import type { LonLat } from '../../../core/geometry/types.ts';
import type { PicturePlace } from '../../../core/model/underlayThings.ts';

/** Where the map gets the tiles of what lies under the drawing; each the bytes of a picture, or null where there is none. */
export interface TileSupply {
  readonly picture: (key: {
    readonly imageId: string;
    readonly level: number;
    readonly column: number;
    readonly row: number;
  }) => Promise<Uint8Array | null>;
  /** Rejects where the file does not give tiles any more; it is not open then. */
  readonly tileFile: (key: {
    readonly path: string;
    readonly zoom: number;
    readonly column: number;
    readonly row: number;
  }) => Promise<Uint8Array | null>;
  /** Whether the tile file is open; of others nothing is shown. */
  readonly isOpen: (path: string) => boolean;
  /** Calls `listener` whenever a tile file was opened or left out, until the returned function is called. */
  readonly onTileFiles: (listener: () => void) => () => void;
}

/** A picture that is being placed by hand. */
export interface Placing {
  readonly underlayId: string;
  /** By points whose places are known; by two places and their distance; or moved as it is. */
  readonly way: 'points' | 'distance' | 'move';
  /** Places of the picture that were clicked and whose places on earth are still to come. */
  readonly marked: readonly PicturePlace[];
}

/** What the hand did on the map while a picture is being placed. */
export type PlacingStep =
  | { readonly mark: PicturePlace }
  | { readonly place: LonLat }
  | { readonly measure: { readonly distanceM: number; readonly bearingDeg: number | null } }
  | { readonly takeBack: true }
  | { readonly end: true };
