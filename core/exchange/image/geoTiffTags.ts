import type { AffineMap } from '../../geometry/picture/affineMap.ts';
import { type Message, message } from '../../words/message.ts';

/** The tags and keys of a GeoTIFF that say where it lies (OGC GeoTIFF 1.1), as they stand in the file. */
export interface GeoTiffTags {
  readonly pixelScale: readonly number[] | null;
  readonly tiepoints: readonly number[] | null;
  readonly transformation: readonly number[] | null;
  /** GTRasterTypeGeoKey: 1 pixel is area, 2 pixel is point. */
  readonly rasterType: number | null;
  /** GTModelTypeGeoKey: 1 projected, 2 degrees of longitude and latitude, 3 geocentric. */
  readonly modelType: number | null;
  readonly projectedCode: number | null;
  readonly geographicCode: number | null;
  /** What the file calls its system, in its own words. */
  readonly citation: string | null;
}

export interface GeoTiffPlace {
  /** Pixels from the corner of the first pixel to the file's own coordinates. */
  readonly map: AffineMap;
  /** EPSG code of those; null where the file names none. */
  readonly epsg: number | null;
  /** It has a system of its own, without a code: which one can only be asked. */
  readonly ownSystem: boolean;
  readonly citation: string | null;
}

const longestCitation = 80;

/** What a file says of the system of its coordinates. */
export type GeoTiffSystem = Pick<GeoTiffPlace, 'epsg' | 'ownSystem' | 'citation'>;

/** Why the system of its coordinates must be asked for; `name`: of the file; null: it is called the elevation model. */
export function whyAskForSystem({ epsg, ownSystem, citation }: GeoTiffSystem, name: string | null): Message {
  if (epsg !== null) return message('exchange.picture.systemNotKnown', { name, epsg });
  const called = citation
    ?.replace(/[\p{C}\s|]+/gu, ' ')
    .trim()
    .slice(0, longestCitation);
  if (!ownSystem) return message('exchange.picture.systemNotSaid', { name });
  return message('exchange.picture.systemWithoutCode', { name, called: called ?? '' });
}

/** Where the tags say that the picture lies; null where they don't say it, or by a way that is no affine map. */
export function placeOfGeoTiff(tags: GeoTiffTags): GeoTiffPlace | null {
  const map = fromTransformation(tags) ?? fromScale(tags);
  if (!map || ![map.a, map.b, map.c, map.d, map.e, map.f].every(Number.isFinite)) return null;
  if (map.a * map.e - map.b * map.d === 0) return null;
  // A pixel that is a point has its coordinates in its middle.
  const half = tags.rasterType === 2 ? 0.5 : 0;
  const { a, b, c, d, e, f } = map;
  return {
    map: { a, b, c: c - (a + b) * half, d, e, f: f - (d + e) * half },
    ...systemOf(tags),
    citation: tags.citation,
  };
}

function fromTransformation({ transformation }: GeoTiffTags): AffineMap | null {
  if (transformation?.length !== 16) return null;
  const [a, b, , c, d, e, , f] = transformation as number[];
  return { a: a!, b: b!, c: c!, d: d!, e: e!, f: f! };
}

function fromScale({ pixelScale, tiepoints }: GeoTiffTags): AffineMap | null {
  if (!pixelScale || pixelScale.length < 2 || !tiepoints || tiepoints.length < 6) return null;
  const [scaleX, scaleY] = pixelScale as [number, number];
  const [i, j, , x, y] = tiepoints as [number, number, number, number, number];
  return { a: scaleX, b: 0, c: x - scaleX * i, d: 0, e: -scaleY, f: y + scaleY * j };
}

const projectedModel = 1;
const degreesModel = 2;

/**
 * 32767 is "user-defined" and 0 "undefined". The degrees that a projected system is worked out from are not what its own
 * coordinates are in, so they never stand for it.
 */
function systemOf({ modelType, projectedCode, geographicCode }: GeoTiffTags): Pick<GeoTiffPlace, 'epsg' | 'ownSystem'> {
  const isProjected = modelType === projectedModel || (modelType !== degreesModel && projectedCode !== null);
  const code = isProjected ? projectedCode : modelType === null || modelType === degreesModel ? geographicCode : null;
  const epsg = code !== null && code > 0 && code < 32767 ? code : null;
  return {
    epsg,
    ownSystem: epsg === null && (modelType !== null || projectedCode !== null || geographicCode !== null),
  };
}
