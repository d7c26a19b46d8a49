/** The user's own maps and pictures underneath the drawing, and how coordinates are written: see `things.ts`. */
import type { LonLat } from './things.ts';

/** A place in a picture: pixels from the upper left corner of its first pixel, x to the right, y down. */
export type PicturePlace = readonly [x: number, y: number];

/** A map or picture that lies under the drawing. */
export interface Underlay {
  readonly kind: 'underlay';
  readonly id: string;
  readonly name: string;
  readonly source: UnderlaySource;
  /** Where a picture lies; null for a tile file, whose tiles say it themselves. */
  readonly placement: Placement | null;
  /** 0: not to be seen, 1: nothing shines through. */
  readonly opacity: number;
  /** The higher lies over the lower. */
  readonly rank: number;
  readonly shown: boolean;
  readonly note: string;
}

export type UnderlaySource = PictureSource | TileFileSource;

/** A picture that was cut into tiles when it was brought in; they lie in the project file under `imageId`. */
export interface PictureSource {
  readonly from: 'picture';
  readonly imageId: string;
  readonly fileName: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** An MBTiles file, left where it is and only read. */
export interface TileFileSource {
  readonly from: 'tileFile';
  readonly path: string;
  readonly fileName: string;
  readonly minZoom: number;
  readonly maxZoom: number;
  /** West, south, east, north in degrees. */
  readonly bounds: readonly [number, number, number, number];
}

export type Placement = ByEye | ByDistance | ByPoints | ByCoordinates;

/** Laid loosely, until more is known. */
export interface ByEye {
  readonly by: 'eye';
  /** Where the middle of the picture lies. */
  readonly at: LonLat;
  readonly metresPerPixel: number;
  /** Bearing of the picture's upper edge's outward side. */
  readonly upDeg: number;
}

/** Two places of the picture whose distance is known. */
export interface ByDistance {
  readonly by: 'distance';
  readonly from: PicturePlace;
  readonly to: PicturePlace;
  readonly distanceM: number;
  /** Where `from` lies, and the bearing from there to `to`. */
  readonly at: LonLat;
  readonly bearingDeg: number;
}

/** Places of the picture whose places on earth are known. As long as they are too few, it lies as by eye. */
export interface ByPoints {
  readonly by: 'points';
  /** Turned and scaled; or stretched differently both ways too. */
  readonly fit: 'similarity' | 'affine';
  readonly points: readonly PicturePoint[];
  readonly before: ByEye;
}

export interface PicturePoint {
  readonly pixel: PicturePlace;
  readonly at: LonLat;
}

/** From a world file or the tags of a GeoTIFF: where a lattice of evenly spaced places of the picture lies. */
export interface ByCoordinates {
  readonly by: 'coordinates';
  /** Name of the coordinate system that the file was in. */
  readonly system: string;
  readonly columns: number;
  readonly rows: number;
  /** Row by row from the top, each from the left; the first and last lie on the picture's edges. */
  readonly at: readonly LonLat[];
}

/** How coordinates are shown and typed. At most one, with id `coordinates`; without it, decimal degrees. */
export interface CoordinateSettings {
  readonly kind: 'coordinateSettings';
  readonly id: 'coordinates';
  /** Id of a known system, or `own`. */
  readonly system: string;
  /** The user's own system: a name and its PROJ text. */
  readonly own: { readonly name: string; readonly definition: string } | null;
}
