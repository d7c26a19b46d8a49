import { message } from '../words/message.ts';
import { note, ownName, rank } from './common.ts';
import { kind, type ThingFrom, type ValueOf, type ValuesOf } from './describe.ts';
import {
  choice,
  flag,
  key,
  lengthM,
  list,
  most,
  neverNothing,
  number,
  orNone,
  place,
  record,
  shortText,
  tagged,
  text,
  textField,
  tuple,
  whole,
} from './fields.ts';

/** A picture of a million pixels a side is no picture. */
const widePx = { min: -1e7, max: 1e7 };
const pixel = number('px', { ...widePx, file: widePx });
const pixels = whole({ unit: 'px', min: 1, max: 1_000_000, file: { min: 1, max: 1_000_000 } });
const bearingDeg = number('degrees', { min: -1e6, max: 1e6, file: { min: -1e6, max: 1e6 } });
const zoom = whole({ max: 30, file: { max: 30 } });
const lonDeg = number('degrees', { min: -180, max: 180, file: { min: -180, max: 180 } });
const latDeg = number('degrees', { min: -90, max: 90, file: { min: -90, max: 90 } });

/** A place in a picture: pixels from the upper left corner of its first pixel, x to the right, y down. */
const picturePlace = tuple([pixel, pixel], message('kinds.mustBe.inPicture'));
export type PicturePlace = readonly [x: number, y: number];

const source = tagged(
  'from',
  {
    /** A picture that was cut into tiles when it was brought in; they lie in the project file under `imageId`. */
    picture: { imageId: key(), fileName: text(), widthPx: pixels, heightPx: pixels },
    /** An MBTiles file, left where it is and only read. */
    tileFile: {
      path: textField({ most: most.filePath, blank: false, neverEmpty: true }),
      fileName: text(),
      minZoom: zoom,
      maxZoom: zoom,
      /** West, south, east, north in degrees. */
      bounds: tuple([lonDeg, latDeg, lonDeg, latDeg], message('kinds.mustBe.bounds')),
    },
  },
  { mustBe: message('kinds.mustBe.source') },
);
export type UnderlaySource = ValueOf<typeof source>;
export type PictureSource = Extract<UnderlaySource, { readonly from: 'picture' }>;
export type TileFileSource = Extract<UnderlaySource, { readonly from: 'tileFile' }>;

const byEyeFields = {
  by: choice(['eye']),
  /** Where the middle of the picture lies. */
  at: place(),
  metresPerPixel: number('m', { above: true, max: 1e9, file: neverNothing }),
  /** Bearing of the picture's upper edge's outward side. */
  upDeg: bearingDeg,
};
/** Laid loosely, until more is known. */
export type ByEye = ValuesOf<typeof byEyeFields>;
const { by: _, ...eye } = byEyeFields;

const pointFields = { pixel: picturePlace, at: place() };
export type PicturePoint = ValuesOf<typeof pointFields>;

/** Most places of a lattice along one side. */
const latticeSide = 65;
const lattice = { min: 2, max: latticeSide };

const placement = tagged(
  'by',
  {
    eye,
    /** Two places of the picture whose distance is known. */
    distance: {
      from: picturePlace,
      to: picturePlace,
      distanceM: lengthM({ above: true, max: 1e9, file: neverNothing }),
      /** Where `from` lies, and the bearing from there to `to`. */
      at: place(),
      bearingDeg,
    },
    /** Places of the picture whose places on earth are known. As long as they are too few, it lies as by eye. */
    points: {
      /** Turned and scaled; or stretched differently both ways too. */
      fit: choice(['similarity', 'affine']),
      points: list(record(pointFields), { most: 1000, mustBe: message('kinds.mustBe.placedPoints') }),
      before: record(byEyeFields),
    },
    /** From a world file or the tags of a GeoTIFF: where a lattice of evenly spaced places of the picture lies. */
    coordinates: {
      /** Name of the coordinate system that the file was in. */
      system: shortText(),
      columns: whole({ ...lattice, file: lattice }),
      rows: whole({ ...lattice, file: lattice }),
      /** Row by row from the top, each from the left; the first and last lie on the picture's edges. */
      at: list(place(), { most: latticeSide ** 2, mustBe: message('kinds.mustBe.places'), fills: ['columns', 'rows'] }),
    },
  },
  { mustBe: message('kinds.mustBe.placement') },
);
export type Placement = ValueOf<typeof placement>;
export type ByDistance = Extract<Placement, { readonly by: 'distance' }>;
export type ByPoints = Extract<Placement, { readonly by: 'points' }>;
export type ByCoordinates = Extract<Placement, { readonly by: 'coordinates' }>;

/** A map or picture that lies under the drawing. */
export const underlay = kind('underlay', {
  prefix: 'Map ',
  lists: [],
  fields: {
    name: ownName,
    source,
    /** Where a picture lies; null for a tile file, whose tiles say it themselves. */
    placement: orNone(placement),
    /** 0: not to be seen, 1: nothing shines through. */
    opacity: number('', { min: 0.05, max: 1, file: { max: 1 } }),
    /** The higher lies over the lower. */
    rank,
    shown: flag(),
    note,
  },
});
export type Underlay = ThingFrom<typeof underlay>;

/** How coordinates are shown and typed. At most one, with id `coordinates`; without it, decimal degrees. */
export const coordinateSettings = kind('coordinateSettings', {
  onlyId: 'coordinates',
  lists: ['placeless'],
  fields: {
    /** Id of a known system, or `own`. */
    system: shortText(),
    /** The user's own system: a name and its PROJ text. */
    own: orNone(record({ name: shortText(), definition: textField({ most: 2000, blank: true }) })),
  },
});
