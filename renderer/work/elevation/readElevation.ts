import type { GeoTIFFImage } from 'geotiff';
import { type Projection, projectionOf } from '../../../core/coordinates/projection.ts';
import { systemOfEpsg } from '../../../core/coordinates/systems.ts';
import { gdalBand } from '../../../core/exchange/elevation/gdalBand.ts';
import { heightsOn, rangeOf, shareKnown } from '../../../core/exchange/elevation/heightsOn.ts';
import {
  type HeightTags,
  type HeightUnitFound,
  heightUnitOf,
  heightUnits,
  holdsDepths,
} from '../../../core/exchange/elevation/heightUnit.ts';
import { type Area, type GridPlan, placesOf, planGrid, stepOfGrid } from '../../../core/exchange/elevation/planGrid.ts';
import { rasterHeightM } from '../../../core/exchange/elevation/raster.ts';
import { whyAskForSystem } from '../../../core/exchange/image/geoTiffTags.ts';
import { photometrics } from '../../../core/exchange/image/tiff/tiffColours.ts';
import { earthAt } from '../../../core/geometry/earth.ts';
import type { AffineMap } from '../../../core/geometry/picture/affineMap.ts';
import type { LonLat, Xy } from '../../../core/geometry/types.ts';
import { largestOf, leastOf } from '../../../core/model/extremes.ts';
import { figures } from '../../../core/words/figures.ts';
import { fixed } from '../../../core/words/numbers/write.ts';
import { placeOfTiff } from '../../pictures/readers/placeOfTiff.ts';
import { openTiff, pictureOf, type TiffPicture } from '../../pictures/readers/tiff/tiffFile.ts';
import { whyNotPixels } from '../../pictures/readers/tiff/tiffTags.ts';
import type { ElevationRead, ElevationRequest } from './messages.ts';
import { readWindow, type ValueWindow } from './readWindow.ts';

/** Reads the heights of an elevation model (GeoTIFF, one height to a pixel) for the ground of a property. */
export async function readElevation(request: ElevationRequest): Promise<ElevationRead> {
  const { file, area, unit } = request;
  const opened = await open(file, request.system);
  if ('message' in opened) return { ok: false, askSystem: null, ...opened };
  const { picture, projection, toPixel, bounds, tags, band, systemName } = opened;
  const { widthPx, heightPx } = picture.tags;
  const wanted = area ?? bounds;
  const plan = planGrid(wanted, cellSizeM(opened));
  const pixels = Array.from(placesOf(plan), (place) => toPixel(projection.toGrid(place)));
  const window = windowAround(pixels, widthPx, heightPx);
  if (!window) return refuse('The elevation model lies elsewhere: none of it is under this property.');
  let values: ValueWindow;
  try {
    values = await readWindow(picture, window);
  } catch {
    return refuse(damaged);
  }
  const gridIn = (inM: number) => {
    const raster = {
      ...values,
      noData: picture.tags.noData,
      unitM: band.scale * inM,
      offsetM: band.offset * inM,
    };
    return heightsOn(plan, (_, index) => {
      const [x, y] = pixels[index]!;
      if (!(x >= 0 && y >= 0 && x <= widthPx && y <= heightPx)) return null;
      const along = (at: number, from: number, count: number) => {
        return Math.min(count, Math.max(0, (at - from - 0.5) / values.every + 0.5));
      };
      return rasterHeightM(raster, along(x, window[0], values.width), along(y, window[1], values.height));
    });
  };
  const found = unit ? { unit, toldBy: 'your choice', doubt: null } : heightUnitOf(tags);
  const { grid, read } = inUnit(found, gridIn);
  const share = shareKnown(grid);
  const range = rangeOf(grid);
  if (!range) return refuse('The elevation model knows no heights under this property.');
  return { ok: true, grid, ...range, unit: read, notes: notesOn(plan, share, systemName) };
}

/** Read in its unit. Where that is only assumed and feet give heights where metres are above all mountains: in feet. */
function inUnit(found: HeightUnitFound, gridIn: (inM: number) => ReturnType<typeof heightsOn>) {
  const grid = gridIn(heightUnits[found.unit].inM);
  if (found.toldBy !== null || found.unit !== 'metres') return { grid, read: found };
  const inFeet = gridIn(heightUnits.feet.inM);
  if (shareKnown(inFeet) <= shareKnown(grid)) return { grid, read: found };
  const doubt =
    'The file does not say in which unit its heights are. In metres some would lie higher than any mountain: feet are an assumption.';
  return { grid: inFeet, read: { unit: 'feet', toldBy: null, doubt } as const };
}

const damaged =
  'The GeoTIFF is damaged, or packed in a way that can’t be read. Save it with Deflate or LZW, or unpacked.';

function refuse(message: string): ElevationRead {
  return { ok: false, message, askSystem: null };
}

interface Opened {
  readonly picture: TiffPicture;
  readonly projection: Projection;
  readonly systemName: string;
  /** From the file's own coordinates to pixels from the corner of the first. */
  readonly toPixel: (grid: Xy) => Xy;
  readonly toGrid: AffineMap;
  readonly bounds: Area;
  readonly tags: HeightTags;
  readonly band: ReturnType<typeof gdalBand>;
}

type NotOpened = { readonly message: string; readonly askSystem?: string };

async function open(file: Blob, chosen: ElevationRequest['system']): Promise<Opened | NotOpened> {
  let picture: TiffPicture;
  try {
    picture = await pictureOf(await openTiff(file), file, 0);
  } catch {
    return { message: 'This is no GeoTIFF that can be read. Choose an elevation model with the ending .tif.' };
  }
  const { samplesPerPixel, bits, photometric } = picture.tags;
  if (samplesPerPixel !== 1 || bits < 8 || photometric === photometrics.palette) {
    return {
      message: 'This GeoTIFF is a picture: it has colours, not one height to a pixel. Bring it in as a map underneath.',
    };
  }
  const why = whyNotPixels(picture.tags);
  if (why) return { message: why };
  const { tags, band } = heightTagsOf(picture.image);
  if (holdsDepths(tags)) {
    return { message: 'This GeoTIFF holds depths below the water, not heights of the ground. Choose another.' };
  }
  const place = await placeOfTiff(picture.image);
  if (!place) {
    return { message: 'The GeoTIFF does not say where it lies. Choose one that was saved with its coordinates.' };
  }
  const system = chosen ?? (place.epsg === null ? null : systemOfEpsg(place.epsg));
  if (!system) {
    const askSystem = whyAskForSystem(place);
    return { message: `The elevation model ${askSystem}`, askSystem };
  }
  const { projection, problem } = projectionOf(system.definition);
  if (!projection) return { message: figures('metric').say(problem) };
  const { a, b, c, d, e, f } = place.map;
  const area = a * e - b * d;
  const toPixel = ([x, y]: Xy): Xy => {
    return [(e * (x - c) - b * (y - f)) / area, (a * (y - f) - d * (x - c)) / area];
  };
  const systemName = figures('metric').say(system.name);
  const bounds = boundsOf(picture, place.map, projection);
  if (!bounds) return { message: `The GeoTIFF lies at no place on earth, if its coordinates are in ${systemName}.` };
  return { picture, projection, systemName, toPixel, toGrid: place.map, bounds, tags, band };
}

function heightTagsOf(image: GeoTIFFImage): Pick<Opened, 'tags' | 'band'> {
  let keys: Readonly<Record<string, unknown>> | null = null;
  try {
    keys = image.getGeoKeys();
  } catch {
    // Damaged keys say nothing.
  }
  const key = (name: string) => {
    const value = keys?.[name];
    return typeof value === 'number' ? value : null;
  };
  const citation = keys?.VerticalCitationGeoKey;
  const metadata: unknown = image.fileDirectory.hasTag('GDAL_METADATA')
    ? image.fileDirectory.getValue('GDAL_METADATA' as never)
    : null;
  const band = gdalBand(typeof metadata === 'string' ? metadata : null);
  const tags = {
    unitCode: key('VerticalUnitsGeoKey'),
    systemCode: key('VerticalCSTypeGeoKey'),
    citation: typeof citation === 'string' ? citation : null,
    unitType: band.unitType,
    planeUnitCode: key('ProjLinearUnitsGeoKey'),
  };
  return { tags, band };
}

function boundsOf({ tags }: TiffPicture, map: AffineMap, projection: Projection): Area | null {
  const { widthPx, heightPx } = tags;
  const corners = [
    [0, 0],
    [widthPx, 0],
    [0, heightPx],
    [widthPx, heightPx],
  ].map(([x, y]) => projection.toLonLat(applied(map, [x!, y!])));
  if (!corners.every(([lon, lat]) => Math.abs(lon) <= 180 && Math.abs(lat) < 90)) return null;
  const [lons, lats] = [corners.map(([lon]) => lon), corners.map(([, lat]) => lat)];
  return [leastOf(lons), leastOf(lats), largestOf(lons), largestOf(lats)];
}

function applied({ a, b, c, d, e, f }: AffineMap, [x, y]: Xy): Xy {
  return [a * x + b * y + c, d * x + e * y + f];
}

/** One pixel of the model in its middle, on the ground. */
function cellSizeM({ picture, projection, toGrid }: Opened): number {
  const [x, y] = [picture.tags.widthPx / 2, picture.tags.heightPx / 2];
  const at = (pixel: Xy): LonLat => projection.toLonLat(applied(toGrid, pixel));
  const here = at([x, y]);
  return Math.max(0.5, earthAt(here).distanceM(here, at([x, y + 1])));
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

function notesOn(plan: GridPlan, share: number, systemName: string): string[] {
  const every = stepOfGrid(plan);
  const step = `A height is kept every ${fixed(every, every < 10 ? 1 : 0)} m. Its coordinates are in ${systemName}.`;
  if (share > 0.999) return [step];
  return [
    step,
    `It covers ${Math.round(100 * share)} % of the ground of the property; elsewhere lengths stay as on the plan.`,
  ];
}
