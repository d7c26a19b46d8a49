import type { Projection } from '../../coordinates/projection.ts';
import { earthAt } from '../../geometry/earth.ts';
import { createLocalPlane } from '../../geometry/localPlane.ts';
import { type AffineMap, applyAffine } from '../../geometry/picture/affineMap.ts';
import type { PictureSize } from '../../geometry/picture/pictureMap.ts';
import { leastMetresPerPixel } from '../../geometry/picture/pictureScale.ts';
import type { LonLat, Xy } from '../../geometry/types.ts';
import type { ByCoordinates } from '../../model/underlayThings.ts';
import { type Message, message } from '../../words/message.ts';

/** Between the points of the lattice a place may be off by this much of a pixel. */
const tolerancePx = 0.1;
const finest = 64;
/** About a kilometre. */
const mostDegreesPerPixel = 0.01;

export type Lattice =
  | { readonly placement: ByCoordinates; readonly problem: null }
  | { readonly placement: null; readonly problem: Message };

/**
 * Where a picture lies that an affine map lays into a coordinate system: places on WGS 84 of a lattice over it, as fine as
 * it must be for straight lines between to be right, so that the file needs no projection later on.
 */
export function latticeOf(map: AffineMap, projection: Projection, size: PictureSize, system: string): Lattice {
  const place = ([x, y]: Xy): LonLat => projection.toLonLat(applyAffine(map, [x, y]));
  const corners = [
    [0, 0],
    [size.widthPx, 0],
    [0, size.heightPx],
    [size.widthPx, size.heightPx],
    [size.widthPx / 2, size.heightPx / 2],
  ] as const;
  if (!corners.map(place).every(isOnEarth)) {
    return { placement: null, problem: message('exchange.picture.notOnEarth', { system }) };
  }
  const corner = place([0, 0]);
  const pixelM = earthAt(corner).distanceM(corner, place([size.widthPx, 0])) / size.widthPx;
  if (pixelM < leastMetresPerPixel) {
    const problem = message('exchange.picture.tooFine', { system, degrees: looksLikeDegrees(map) });
    return { placement: null, problem };
  }
  let cells = 1;
  while (cells < finest && errorPx(place, size, cells) > tolerancePx) cells *= 2;
  const at = nodes(size, cells + 1).map(place);
  return { placement: { by: 'coordinates', system, columns: cells + 1, rows: cells + 1, at }, problem: null };
}

/** Whether an affine map may give longitude and latitude: where it begins is a place on earth, and a pixel is small. */
export function looksLikeDegrees({ a, b, c, d, e, f }: AffineMap): boolean {
  return isOnEarth([c, f]) && [a, b, d, e].every((step) => Math.abs(step) < mostDegreesPerPixel);
}

function isOnEarth([lon, lat]: LonLat): boolean {
  return Math.abs(lon) <= 180 && Math.abs(lat) < 90;
}

function nodes({ widthPx, heightPx }: PictureSize, count: number): Xy[] {
  return Array.from({ length: count * count }, (_, i): Xy => {
    return [((i % count) / (count - 1)) * widthPx, (Math.floor(i / count) / (count - 1)) * heightPx];
  });
}

/** How far the middles of the lattice's cells lie from where straight lines put them, pixels; of some of the cells. */
function errorPx(place: (pixel: Xy) => LonLat, { widthPx, heightPx }: PictureSize, cells: number): number {
  const plane = createLocalPlane(place([widthPx / 2, heightPx / 2]));
  const xy = (u: number, v: number) => plane.toXy(place([u * widthPx, v * heightPx]));
  let worst = 0;
  for (const cell of new Set([0, Math.floor(cells / 2), cells - 1])) {
    for (const other of new Set([0, Math.floor(cells / 2), cells - 1])) {
      const [left, right, top, bottom] = [cell / cells, (cell + 1) / cells, other / cells, (other + 1) / cells];
      const [nw, ne, sw, se] = [xy(left, top), xy(right, top), xy(left, bottom), xy(right, bottom)];
      const [midX, midY] = [(left + right) / 2, (top + bottom) / 2];
      const pixelM = Math.hypot(ne[0] - nw[0], ne[1] - nw[1]) / ((right - left) * widthPx);
      const gap = (p: Xy, q: Xy, r: Xy) => Math.hypot((p[0] + q[0]) / 2 - r[0], (p[1] + q[1]) / 2 - r[1]) / pixelM;
      worst = Math.max(
        worst,
        gap(nw, ne, xy(midX, top)),
        gap(sw, se, xy(midX, bottom)),
        gap(nw, sw, xy(left, midY)),
        gap(ne, se, xy(right, midY)),
        gap(nw, se, xy(midX, midY)),
      );
    }
  }
  return worst;
}
