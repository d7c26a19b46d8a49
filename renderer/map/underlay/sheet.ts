import type { Xy } from '../../../core/geometry/types.ts';
import type { TileRequest } from './tileCache.ts';

/** A tile to be drawn: which, and where it lies. */
export interface SheetTile extends TileRequest {
  /** What it shows, in the sheet's own units: x, y, width, height. */
  readonly extent: readonly [number, number, number, number];
  /** From those units to the working plane. */
  readonly toXy: (place: Xy) => Xy;
}

/** What lies under the drawing, as tiles at several levels of detail. */
export interface Sheet {
  readonly id: string;
  readonly opacity: number;
  /** The tiles for a view, the coarsest level first; `wanted` ones are sent for, of the others what is at hand will do. */
  readonly tilesFor: (look: SheetLook) => readonly { readonly tile: SheetTile; readonly wanted: boolean }[];
}

export interface SheetLook {
  /** Of the view's corners and the middles of its sides. */
  readonly outline: readonly Xy[];
  /** Pixels of the screen itself, not of CSS. */
  readonly screenPxPerM: number;
}

/** More tiles than this in one view are not drawn: the map is looked at from too far away for them. */
export const mostInView = 400;
