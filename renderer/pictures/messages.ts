import type { PictureTile } from '../../core/api/pictureApi.ts';
import type { GeoTiffPlace } from '../../core/exchange/image/geoTiffTags.ts';

/** What passes between the window and the worker that cuts a picture into tiles. */

export type ToCutter =
  /** Looks into the picture; answered by `described`. */
  | { readonly type: 'open'; readonly file: File; readonly turned: boolean }
  /** Cut the next piece, now that the last one is stored. */
  | { readonly type: 'next' };

export type FromCutter =
  | {
      readonly type: 'described';
      readonly widthPx: number;
      readonly heightPx: number;
      readonly place: GeoTiffPlace | null;
    }
  | { readonly type: 'tiles'; readonly tiles: readonly PictureTile[] }
  | { readonly type: 'done' }
  | { readonly type: 'problem'; readonly message: string };
