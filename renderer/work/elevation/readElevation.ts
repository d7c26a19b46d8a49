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
import { type GeoTiffSystem, whyAskForSystem } from '../../../core/exchange/image/geoTiffTags.ts';
import { photometrics } from '../../../core/exchange/image/tiff/tiffColours.ts';
import { earthAt } from '../../../core/geometry/earth.ts';
import type { AffineMap } from '../../../core/geometry/picture/affineMap.ts';
import type { LonLat, Xy } from '../../../core/geometry/types.ts';
import { largestOf, leastOf } from '../../../core/model/extremes.ts';
import { type Message, message } from '../../../core/words/message.ts';
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
  if (!window) return refuse(message('exchange.heights.elsewhere'));
  let values: ValueWindow;
  try {
    values = await readWindow(picture, window);
  } catch {
    return refuse(message('exchange.heights.damaged'));
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
  const found = unit ? { unit, toldBy: message('exchange.heights.toldBy.you'), doubt: null } : heightUnitOf(tags);
  const { grid, read } = inUnit(found, gridIn);
  const share = shareKnown(grid);
  const range = rangeOf(grid);
  if (!range) return refuse(message('exchange.heights.noneKnown'));
  return { ok: true, grid, ...range, unit: read, notes: notesOn(plan, share, systemName) };
}

/** Read in its unit. Where that is only assumed and feet give heights where metres are above all mountains: in feet. */
function inUnit(found: HeightUnitFound, gridIn: (inM: number) => ReturnType<typeof heightsOn>) {
  const grid = gridIn(heightUnits[found.unit].inM);
  if (found.toldBy !== null || found.unit !== 'metres') return { grid, read: found };
  const inFeet = gridIn(heightUnits.feet.inM);
  if (shareKnown(inFeet) <= shareKnown(grid)) return { grid, read: found };
  const doubt = message('exchange.heights.tooHighInMetres');
  return { grid: inFeet, read: { unit: 'feet', toldBy: null, doubt } as const };
}

function refuse(why: Message): ElevationRead {
  return { ok: false, message: why, askSystem: null };
}

interface Opened {
  readonly picture: TiffPicture;
  readonly projection: Projection;
  readonly systemName: Message;
  /** From the file's own coordinates to pixels from the corner of the first. */
  readonly toPixel: (grid: Xy) => Xy;
  readonly toGrid: AffineMap;
  readonly bounds: Area;
  readonly tags: HeightTags;
  readonly band: ReturnType<typeof gdalBand>;
}

type NotOpened = { readonly message: Message; readonly askSystem?: GeoTiffSystem };

async function open(file: Blob, chosen: ElevationRequest['system']): Promise<Opened | NotOpened> {
  let picture: TiffPicture;
  try {
    picture = await pictureOf(await openTiff(file), file, 0);
  } catch {
    return { message: message('exchange.heights.noGeoTiff') };
  }
  const { samplesPerPixel, bits, photometric } = picture.tags;
  if (samplesPerPixel !== 1 || bits < 8 || photometric === photometrics.palette) {
    return { message: message('exchange.heights.isPicture') };
  }
  const why = whyNotPixels(picture.tags);
  if (why) return { message: why };
  const { tags, band } = heightTagsOf(picture.image);
  if (holdsDepths(tags)) {
    return { message: message('exchange.heights.depths') };
  }
  const place = await placeOfTiff(picture.image);
  if (!place) {
    return { message: message('exchange.heights.noPlace') };
  }
  const system = chosen ?? (place.epsg === null ? null : systemOfEpsg(place.epsg));
  if (!system) {
    const { epsg, ownSystem, citation } = place;
    return { message: whyAskForSystem(place, null), askSystem: { epsg, ownSystem, citation } };
  }
  const { projection, problem } = projectionOf(system.definition);
  if (!projection) return { message: problem };
  const { a, b, c, d, e, f } = place.map;
  const area = a * e - b * d;
  const toPixel = ([x, y]: Xy): Xy => {
    return [(e * (x - c) - b * (y - f)) / area, (a * (y - f) - d * (x - c)) / area];
  };
  const bounds = boundsOf(picture, place.map, projection);
  if (!bounds) return { message: message('exchange.heights.notOnEarth', { system: system.name }) };
  return { picture, projection, systemName: system.name, toPixel, toGrid: place.map, bounds, tags, band };
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

function notesOn(plan: GridPlan, share: number, system: Message): Message[] {
  const everyM = stepOfGrid(plan);
  const step = message('exchange.heights.kept', { everyM, decimals: everyM < 10 ? 1 : 0, system });
  if (share > 0.999) return [step];
  return [step, message('exchange.heights.covers', { percent: Math.round(100 * share) })];
}
