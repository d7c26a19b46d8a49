import type { AffineMap } from '../../geometry/picture/affineMap.ts';

/** The tags and keys of a GeoTIFF that say where it lies (OGC GeoTIFF 1.1), as they stand in the file. */
export interface GeoTiffTags {
  readonly pixelScale: readonly number[] | null;
  readonly tiepoints: readonly number[] | null;
  readonly transformation: readonly number[] | null;
  /** GTRasterTypeGeoKey: 1 pixel is area, 2 pixel is point. */
  readonly rasterType: number | null;
  readonly projectedCode: number | null;
  readonly geographicCode: number | null;
}

export interface GeoTiffPlace {
  /** Pixels from the corner of the first pixel to the file's own coordinates. */
  readonly map: AffineMap;
  /** EPSG code of those; null where the file names none. */
  readonly epsg: number | null;
}

/** Where the tags say that the picture lies; null where they don't say it, or by a way that is no affine map. */
export function placeOfGeoTiff(tags: GeoTiffTags): GeoTiffPlace | null {
  const map = fromTransformation(tags) ?? fromScale(tags);
  if (!map || ![map.a, map.b, map.c, map.d, map.e, map.f].every(Number.isFinite)) return null;
  if (map.a * map.e - map.b * map.d === 0) return null;
  // A pixel that is a point has its coordinates in its middle.
  const half = tags.rasterType === 2 ? 0.5 : 0;
  const { a, b, c, d, e, f } = map;
  return { map: { a, b, c: c - (a + b) * half, d, e, f: f - (d + e) * half }, epsg: epsgOf(tags) };
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

/** 32767 is "user-defined" and 0 "undefined". */
function epsgOf({ projectedCode, geographicCode }: GeoTiffTags): number | null {
  const named = [projectedCode, geographicCode].find((code) => code !== null && code > 0 && code < 32767);
  return named ?? null;
}
