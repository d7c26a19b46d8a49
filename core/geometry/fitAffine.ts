import { message } from '../words/message.ts';
import {
  type Centred,
  type ControlPoint,
  centre,
  coincide,
  type FitQuality,
  fitQuality,
  isFinitePoint,
  type NoFit,
  noFit,
} from './controlPoint.ts';
import type { Xy } from './types.ts';

/** east = a x + b y + c, north = d x + e y + f: turned, scaled and stretched differently both ways. */
export interface AffineFit extends FitQuality {
  readonly refused: false;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
  /** What one pixel covers on the ground. */
  readonly pixelAreaM2: number;
  /** Where a pixel lies on the map. */
  readonly predict: (pixel: Xy) => Xy;
}

/** Points this much narrower than they are long are on one line. */
const narrowest = 1e-6;

/** Places a picture by three control points or more: least squares of the distances on the map, all points alike. */
export function fitAffine(points: readonly ControlPoint[]): AffineFit | NoFit {
  if (!points.every(isFinitePoint)) return noFit('notANumber', message('coordinates.fit.notANumber'));
  if (points.length < 3) return noFit('tooFewPoints', message('coordinates.fit.threeNeeded'));
  const pixels = centre(points.map(({ pixel }) => pixel));
  const maps = centre(points.map(({ map }) => map));
  const refusal = refuse(pixels, 'InPicture') ?? refuse(maps, 'OnMap');
  if (refusal) return refusal;
  const [a, b] = solve(pixels, maps, 0);
  const [d, e] = solve(pixels, maps, 1);
  const predict = ([px, py]: Xy): Xy => {
    const [x, y] = [px - pixels.mean[0], py - pixels.mean[1]];
    return [maps.mean[0] + a * x + b * y, maps.mean[1] + d * x + e * y];
  };
  const [c, f] = predict([0, 0]);
  return {
    refused: false,
    a,
    b,
    c,
    d,
    e,
    f,
    pixelAreaM2: Math.abs(a * e - b * d),
    predict,
    ...fitQuality(points, predict, 6),
  };
}

function refuse(points: Centred, where: 'InPicture' | 'OnMap'): NoFit | null {
  if (coincide(points)) {
    return noFit('coincide', message(`coordinates.fit.twoApart${where}`));
  }
  if (widthToLength(points) > narrowest) return null;
  return noFit('inOneLine', message(`coordinates.fit.oneLine${where}`));
}

/** Of the scatter of centred points: 0 on one line, 1 all round. */
function widthToLength({ offsets, mean, spread }: Centred): number {
  let [xx, xy, yy] = [0, 0, 0];
  for (const [x, y] of offsets) {
    xx += x * x;
    xy += x * y;
    yy += y * y;
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  const across = offsets.reduce((sum, [x, y]) => sum + (y * Math.cos(angle) - x * Math.sin(angle)) ** 2, 0);
  const width = Math.sqrt(across / offsets.length);
  // Coordinates hold no more digits than these, however long the line.
  const roundingError = 1e-15 * (Math.abs(mean[0]) + Math.abs(mean[1]));
  return width <= roundingError ? 0 : width / spread;
}

/** Least squares of one map coordinate on both pixel coordinates, by orthogonalising them (modified Gram-Schmidt). */
function solve(pixels: Centred, maps: Centred, axis: 0 | 1): Xy {
  const x = pixels.offsets.map(([px]) => px);
  const y = pixels.offsets.map(([, py]) => py);
  const target = maps.offsets.map((offset) => offset[axis]);
  if (inner(x, x) < inner(y, y)) {
    const [onY, onX] = solveColumns(y, x, target);
    return [onX, onY];
  }
  return solveColumns(x, y, target);
}

function solveColumns(first: readonly number[], second: readonly number[], target: readonly number[]): Xy {
  const squares = inner(first, first);
  const share = inner(first, second) / squares;
  const rest = second.map((value, i) => value - share * first[i]!);
  const along = inner(first, target) / squares;
  const left = target.map((value, i) => value - along * first[i]!);
  const onSecond = inner(rest, left) / inner(rest, rest);
  return [along - share * onSecond, onSecond];
}

function inner(p: readonly number[], q: readonly number[]): number {
  return p.reduce((sum, value, i) => sum + value * q[i]!, 0);
}
