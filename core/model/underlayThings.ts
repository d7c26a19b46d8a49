/** The user's own maps and pictures underneath the drawing, and how coordinates are written: see `things.ts`. */
import type { ThingOf } from '../kinds/allKinds.ts';

export type {
  ByCoordinates,
  ByDistance,
  ByEye,
  ByPoints,
  PicturePlace,
  PicturePoint,
  PictureSource,
  Placement,
  TileFileSource,
  UnderlaySource,
} from '../kinds/underlay.ts';

export type Underlay = ThingOf<'underlay'>;
export type CoordinateSettings = ThingOf<'coordinateSettings'>;
