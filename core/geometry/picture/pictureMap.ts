import type { ByCoordinates, ByDistance, ByEye, ByPoints, Placement } from '../../model/underlayThings.ts';
import type { Message } from '../../words/message.ts';
import type { FitQuality } from '../controlPoint.ts';
import { fitAffine } from '../fitAffine.ts';
import { fitSimilarity } from '../fitSimilarity.ts';
import type { LocalPlane } from '../localPlane.ts';
import type { Xy } from '../types.ts';
import { type AffineMap, applyAffine } from './affineMap.ts';

/** Where the places of a picture lie on the working plane. */
export interface PictureMap {
  readonly toXy: (pixel: Xy) => Xy;
  /** The pixel that lies at a place of the plane; may be outside the picture. */
  readonly toPixel: (xy: Xy) => Xy;
  /** How well control points are met; null where there are none, or too few of them. */
  readonly quality: FitQuality | null;
  /** Why the control points give no placement (it then lies as by eye), or null. */
  readonly refused: Message | null;
  /** Of the ground, at the picture's middle. */
  readonly metresPerPixel: number;
}

export interface PictureSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

export function pictureMap(placement: Placement, size: PictureSize, plane: LocalPlane): PictureMap {
  switch (placement.by) {
    case 'eye':
      return exact(mapByEye(placement, size, plane), size);
    case 'distance':
      return exact(mapByDistance(placement, plane), size);
    case 'points':
      return mapByPoints(placement, size, plane);
    case 'coordinates':
      return exact(mapByLattice(placement, size, plane), size);
  }
}

function exact(toXy: (pixel: Xy) => Xy, size: PictureSize): PictureMap {
  return finished(toXy, size, null, null);
}

function finished(
  toXy: (pixel: Xy) => Xy,
  size: PictureSize,
  quality: FitQuality | null,
  refused: Message | null,
): PictureMap {
  const middle: Xy = [size.widthPx / 2, size.heightPx / 2];
  const { a, b, d, e } = slopeAt(toXy, middle);
  return {
    toXy,
    toPixel: (xy) => inverse(toXy, xy, middle),
    quality,
    refused,
    metresPerPixel: Math.sqrt(Math.abs(a * e - b * d)),
  };
}

/** A picture whose pixel `from` lies at `at`, turned so that its up has this bearing. */
function turnedAndScaled(from: Xy, at: Xy, metresPerPixel: number, upDeg: number): AffineMap {
  const angle = (upDeg * Math.PI) / 180;
  const [cos, sin] = [metresPerPixel * Math.cos(angle), metresPerPixel * Math.sin(angle)];
  // The picture's y runs down, so up is (sin, cos) for -y and right is (cos, -sin) for x.
  const [a, b, d, e] = [cos, -sin, -sin, -cos];
  return { a, b, c: at[0] - a * from[0] - b * from[1], d, e, f: at[1] - d * from[0] - e * from[1] };
}

function mapByEye({ at, metresPerPixel, upDeg }: ByEye, size: PictureSize, plane: LocalPlane): (pixel: Xy) => Xy {
  const middle: Xy = [size.widthPx / 2, size.heightPx / 2];
  const map = turnedAndScaled(middle, plane.toXy(at), metresPerPixel, upDeg);
  return (pixel) => applyAffine(map, pixel);
}

function mapByDistance({ from, to, distanceM, at, bearingDeg }: ByDistance, plane: LocalPlane): (pixel: Xy) => Xy {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const lengthPx = Math.hypot(dx, dy) || 1;
  const inPictureDeg = (Math.atan2(dx, -dy) * 180) / Math.PI;
  const map = turnedAndScaled(from, plane.toXy(at), distanceM / lengthPx, bearingDeg - inPictureDeg);
  return (pixel) => applyAffine(map, pixel);
}

function mapByPoints({ fit: wanted, points, before }: ByPoints, size: PictureSize, plane: LocalPlane): PictureMap {
  const known = points.map(({ pixel, at }) => ({ pixel, map: plane.toXy(at) }));
  const fit = wanted === 'affine' ? fitAffine(known) : fitSimilarity(known);
  if (fit.refused) return finished(mapByEye(before, size, plane), size, null, fit.message);
  return finished(fit.predict, size, fit, null);
}

function mapByLattice({ columns, rows, at }: ByCoordinates, size: PictureSize, plane: LocalPlane): (pixel: Xy) => Xy {
  const nodes = at.map((lonLat) => plane.toXy(lonLat));
  return ([x, y]) => {
    const [u, v] = [(x / size.widthPx) * (columns - 1), (y / size.heightPx) * (rows - 1)];
    const column = Math.min(columns - 2, Math.max(0, Math.floor(u)));
    const row = Math.min(rows - 2, Math.max(0, Math.floor(v)));
    const [s, t] = [u - column, v - row];
    const node = (right: number, down: number) => nodes[(row + down) * columns + column + right]!;
    const mixed = (axis: 0 | 1) =>
      (1 - s) * (1 - t) * node(0, 0)[axis] +
      s * (1 - t) * node(1, 0)[axis] +
      (1 - s) * t * node(0, 1)[axis] +
      s * t * node(1, 1)[axis];
    return [mixed(0), mixed(1)];
  };
}

function slopeAt(toXy: (pixel: Xy) => Xy, [x, y]: Xy): { a: number; b: number; d: number; e: number } {
  const step = 0.5;
  const [left, right, up, down] = [toXy([x - step, y]), toXy([x + step, y]), toXy([x, y - step]), toXy([x, y + step])];
  return { a: right[0] - left[0], b: down[0] - up[0], d: right[1] - left[1], e: down[1] - up[1] };
}

/** Newton's method; one step where the map is affine, and every map here is nearly so. */
function inverse(toXy: (pixel: Xy) => Xy, target: Xy, start: Xy): Xy {
  let pixel = start;
  for (let step = 0; step < 12; step++) {
    const now = toXy(pixel);
    const [east, north] = [target[0] - now[0], target[1] - now[1]];
    const { a, b, d, e } = slopeAt(toXy, pixel);
    const determinant = a * e - b * d;
    const move: Xy = [(e * east - b * north) / determinant, (a * north - d * east) / determinant];
    pixel = [pixel[0] + move[0], pixel[1] + move[1]];
    if (!(Math.hypot(...move) > 1e-6)) break;
  }
  return pixel;
}
