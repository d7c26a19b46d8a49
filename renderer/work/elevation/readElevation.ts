import { fromBlob, type GeoTIFF, type GeoTIFFImage } from 'geotiff';
import { type Projection, projectionOf } from '../../../core/coordinates/projection.ts';
import { systemOfEpsg } from '../../../core/coordinates/systems.ts';
import { heightsOn, shareKnown } from '../../../core/exchange/elevation/heightsOn.ts';
import { type Area, type GridPlan, placesOf, planGrid, stepOfGrid } from '../../../core/exchange/elevation/planGrid.ts';
import { type Raster, rasterHeightM } from '../../../core/exchange/elevation/raster.ts';
import { distanceM } from '../../../core/geometry/geodesic.ts';
import type { AffineMap } from '../../../core/geometry/picture/affineMap.ts';
import type { LonLat, Xy } from '../../../core/geometry/types.ts';
import { placeOfTiff } from '../../pictures/readers/placeOfTiff.ts';
import type { ElevationRead, ElevationRequest } from './messages.ts';

/** Values read at once along either side; a larger piece is read coarser. */
const mostSide = 3000;

/** Feet by the codes of GeoTIFF's VerticalUnitsGeoKey: EPSG 9002 (international) and 9003 (US survey). */
const unitsM: Readonly<Record<number, number>> = { 9002: 0.3048, 9003: 1200 / 3937 };

/** Reads the heights of an elevation model (GeoTIFF, one height to a pixel) for the ground of a property. */
export async function readElevation(
  { file, area }: ElevationRequest,
  openFile: (file: Blob) => Promise<GeoTIFF> = fromBlob,
): Promise<ElevationRead> {
  const opened = await open(file, openFile);
  if (typeof opened === 'string') return { ok: false, message: opened };
  const { image, projection, toPixel, bounds } = opened;
  const wanted = area ?? bounds;
  const plan = planGrid(wanted, cellSizeM(opened));
  const pixels = Array.from(placesOf(plan), (place) => toPixel(projection.toGrid(place)));
  const window = windowAround(pixels, image.getWidth(), image.getHeight());
  if (!window) {
    return { ok: false, message: 'The elevation model lies elsewhere: none of it is under this property.' };
  }
  const raster = await read(image, window);
  if (typeof raster === 'string') return { ok: false, message: raster };
  const [left, top, right, bottom] = window;
  const [scaleX, scaleY] = [raster.width / (right - left), raster.height / (bottom - top)];
  const grid = heightsOn(plan, (place) => {
    const [x, y] = toPixel(projection.toGrid(place));
    return rasterHeightM(raster, (x - left) * scaleX, (y - top) * scaleY);
  });
  const share = shareKnown(grid);
  if (share === 0) return { ok: false, message: 'The elevation model knows no heights under this property.' };
  return { ok: true, grid, notes: notesOn(plan, share) };
}

interface Opened {
  readonly image: GeoTIFFImage;
  readonly projection: Projection;
  /** From the file's own coordinates to pixels from the corner of the first. */
  readonly toPixel: (grid: Xy) => Xy;
  readonly toGrid: AffineMap;
  readonly bounds: Area;
}

async function open(file: Blob, openFile: (file: Blob) => Promise<GeoTIFF>): Promise<Opened | string> {
  let image: GeoTIFFImage;
  try {
    image = await (await openFile(file)).getImage(0);
  } catch {
    return 'This is no GeoTIFF that can be read. Choose an elevation model with the ending .tif.';
  }
  if (image.getSamplesPerPixel() !== 1) {
    return 'This GeoTIFF is a picture: it has several colours to a pixel, not one height. Bring it in as a map underneath.';
  }
  const place = await placeOfTiff(image);
  if (!place) return 'The GeoTIFF does not say where it lies. Choose one that was saved with its coordinates.';
  const system = place.epsg === null ? null : systemOfEpsg(place.epsg);
  if (!system) {
    const named = place.epsg === null ? 'no coordinate system' : `the coordinate system EPSG:${place.epsg}`;
    return `The GeoTIFF names ${named}, which is not known here. Save it in WGS 84, UTM or the system of your country.`;
  }
  const { projection, problem } = projectionOf(system.definition);
  if (!projection) return problem;
  const { a, b, c, d, e, f } = place.map;
  const area = a * e - b * d;
  const toPixel = ([x, y]: Xy): Xy => {
    return [(e * (x - c) - b * (y - f)) / area, (a * (y - f) - d * (x - c)) / area];
  };
  const bounds = boundsOf(image, place.map, projection);
  return bounds ? { image, projection, toPixel, toGrid: place.map, bounds } : 'The GeoTIFF lies at no place on earth.';
}

function boundsOf(image: GeoTIFFImage, map: AffineMap, projection: Projection): Area | null {
  const [width, height] = [image.getWidth(), image.getHeight()];
  const corners = [
    [0, 0],
    [width, 0],
    [0, height],
    [width, height],
  ].map(([x, y]) => projection.toLonLat(applied(map, [x!, y!])));
  if (!corners.every(([lon, lat]) => Math.abs(lon) <= 180 && Math.abs(lat) < 90)) return null;
  const [lons, lats] = [corners.map(([lon]) => lon), corners.map(([, lat]) => lat)];
  return [Math.min(...lons), Math.min(...lats), Math.max(...lons), Math.max(...lats)];
}

function applied({ a, b, c, d, e, f }: AffineMap, [x, y]: Xy): Xy {
  return [a * x + b * y + c, d * x + e * y + f];
}

/** One pixel of the model in its middle, on the ground. */
function cellSizeM({ image, projection, toGrid }: Opened): number {
  const [x, y] = [image.getWidth() / 2, image.getHeight() / 2];
  const at = (pixel: Xy): LonLat => projection.toLonLat(applied(toGrid, pixel));
  return Math.max(0.5, distanceM(at([x, y]), at([x, y + 1])));
}

/** The pixels that are needed for some places, with two around them; null where none of the model is. */
function windowAround(
  pixels: readonly Xy[],
  width: number,
  height: number,
): readonly [left: number, top: number, right: number, bottom: number] | null {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of pixels) {
    left = Math.min(left, x);
    top = Math.min(top, y);
    right = Math.max(right, x);
    bottom = Math.max(bottom, y);
  }
  const clip = (value: number, most: number) => Math.min(most, Math.max(0, value));
  const window = [
    clip(Math.floor(left) - 2, width),
    clip(Math.floor(top) - 2, height),
    clip(Math.ceil(right) + 2, width),
    clip(Math.ceil(bottom) + 2, height),
  ] as const;
  return window[2] > window[0] && window[3] > window[1] ? window : null;
}

async function read(image: GeoTIFFImage, window: readonly [number, number, number, number]): Promise<Raster | string> {
  const [left, top, right, bottom] = window;
  const [width, height] = [right - left, bottom - top].map((side) => Math.min(side, mostSide));
  try {
    const values = await image.readRasters({
      window: [...window],
      width: width!,
      height: height!,
      resampleMethod: 'bilinear',
      interleave: true,
    });
    const vertical: unknown = (image.getGeoKeys() as Readonly<Record<string, unknown>> | null)?.VerticalUnitsGeoKey;
    const unitM = (typeof vertical === 'number' ? unitsM[vertical] : undefined) ?? 1;
    return {
      values: values as unknown as ArrayLike<number>,
      width: width!,
      height: height!,
      noData: image.getGDALNoData(),
      unitM,
    };
  } catch {
    return 'The GeoTIFF is damaged, or packed in a way that can’t be read. Save it with Deflate or LZW, or unpacked.';
  }
}

function notesOn(plan: GridPlan, share: number): string[] {
  const every = stepOfGrid(plan);
  const step = `A height is kept every ${every < 10 ? every.toFixed(1) : Math.round(every)} m.`;
  if (share > 0.999) return [step];
  return [
    step,
    `It covers ${Math.round(100 * share)} % of the ground of the property; elsewhere lengths stay as on the plan.`,
  ];
}
