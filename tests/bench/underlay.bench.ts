import { projectionOf } from '../../core/coordinates/projection.ts';
import { systemOfEpsg } from '../../core/coordinates/systems.ts';
import { jpegStrips } from '../../core/exchange/image/jpeg/jpegStrips.ts';
import { readJpeg } from '../../core/exchange/image/jpeg/readJpeg.ts';
import { latticeOf } from '../../core/exchange/image/latticeOf.ts';
import { createLocalPlane } from '../../core/geometry/localPlane.ts';
import { affineCells } from '../../core/geometry/picture/affineCells.ts';
import { lonLatInTile, metresPerTilePixel, tilePlaceOf } from '../../core/geometry/picture/webMercator.ts';
import type { LonLat, Xy } from '../../core/geometry/types.ts';
import { tiffBands } from '../../renderer/pictures/readers/tiff/tiffBands.ts';
import { openTiff, pictureOf } from '../../renderer/pictures/readers/tiff/tiffFile.ts';
import { flatJpeg } from '../support/flatJpeg.ts';
import { madeTiff } from '../support/madeTiff.ts';
import { measure, summary } from './measure.ts';
import type { BenchRow } from './row.ts';

const home: LonLat = [175.3, -37.9];

export async function bench(): Promise<BenchRow[]> {
  return [bands(), await tiff(), tilesOfAView(), lattice()];
}

/** A scan as an office writes it, read to colours. */
async function tiff(): Promise<BenchRow> {
  const [width, height] = [4000, 3000];
  const valueAt = (x: number, y: number) => ((x >> 4) + (y >> 5)) & 1;
  const made = madeTiff({ width, height, bits: 1, photometric: 0, packing: 'lzw', rowsPerStrip: 64, valueAt });
  const file = new Blob([new Uint8Array(made)]);
  const read = async () => {
    const tiff = await openTiff(file);
    const { bands } = tiffBands(await pictureOf(tiff, file, 0), null);
    for (let top = 0; top < height; top += 512) await bands!.read(top, Math.min(512, height - top));
  };
  const times: number[] = [];
  for (let round = 0; round < 4; round++) {
    const start = performance.now();
    await read();
    if (round > 0) times.push(performance.now() - start);
  }
  return {
    name: 'a scanned TIFF of 12 million pixels, one bit each, LZW',
    size: width * height,
    ...summary(times),
    unit: 'ms',
    budget: null,
  };
}

/** What passes through this thread when a large photo comes in; the decoding itself is the browser's. */
function bands(): BenchRow {
  const [widthPx, heightPx] = [10_000, 7500];
  const levelsAt = (column: number, row: number) => [(column * 13 + row * 7) % 256, column % 256, row % 256] as const;
  const bytes = flatJpeg({ widthPx, heightPx, levelsAt, sampling: [2, 2] });
  const { jpeg } = readJpeg(bytes);
  return {
    name: 'a JPEG of 75 million pixels cut in bands',
    size: widthPx * heightPx,
    ...measure(() => [...jpegStrips(bytes, jpeg!, 512)].length, 5),
    unit: 'ms',
    budget: null,
  };
}

/** Every frame that draws a web map asks where its tiles lie. */
function tilesOfAView(): BenchRow {
  const plane = createLocalPlane(home);
  const zoom = 16;
  const [left, top] = tilePlaceOf(zoom, home).map(Math.floor) as [number, number];
  const toleranceM = 0.25 * metresPerTilePixel(zoom, home[1]);
  const work = () => {
    let cells = 0;
    for (let i = 0; i < 48; i++) {
      const [column, row] = [left + (i % 8) - 4, top + Math.floor(i / 8) - 3];
      const toXy = (place: Xy) => plane.toXy(lonLatInTile(zoom, column, row, place));
      cells += affineCells(toXy, [0, 0, 1, 1], toleranceM).length;
    }
    return cells;
  };
  return { name: 'where the 48 map tiles of a view lie', size: 48, ...measure(work, 60), unit: 'ms', budget: 16 };
}

function lattice(): BenchRow {
  const { projection } = projectionOf(systemOfEpsg(2193)!.definition);
  const map = { a: 0.5, b: 0, c: 1_795_000, d: 0, e: -0.5, f: 5_806_000 };
  const size = { widthPx: 20_000, heightPx: 15_000 };
  return {
    name: 'the place of a GeoTIFF 10 km across',
    size: size.widthPx,
    ...measure(() => latticeOf(map, projection!, size, 'NZTM2000'), 20),
    unit: 'ms',
    budget: null,
  };
}
