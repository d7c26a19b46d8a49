import { message } from '../words/message.ts';
import {
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

/** east = a x + b y + c, north = b x - a y + d: turned and scaled, not stretched; the picture's y runs down. */
export interface SimilarityFit extends FitQuality {
  readonly refused: false;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly metresPerPixel: number;
  /** Of the picture's x to the right, degrees anticlockwise from east. */
  readonly rotationDeg: number;
  /** Where a pixel lies on the map. */
  readonly predict: (pixel: Xy) => Xy;
}

/**
 * Places a picture by two control points or more: least squares of the distances on the map, all points alike
 * (four-parameter Helmert transformation, any surveying text).
 */
export function fitSimilarity(points: readonly ControlPoint[]): SimilarityFit | NoFit {
  if (!points.every(isFinitePoint)) return noFit('notANumber', message('coordinates.fit.notANumber'));
  if (points.length < 2) return noFit('tooFewPoints', message('coordinates.fit.twoNeeded'));
  const pixels = centre(points.map(({ pixel }) => pixel));
  const maps = centre(points.map(({ map }) => map));
  if (coincide(pixels)) {
    return noFit('coincide', message('coordinates.fit.onePlaceInPicture'));
  }
  if (coincide(maps)) {
    return noFit('coincide', message('coordinates.fit.onePlaceOnMap'));
  }
  let [sumA, sumB, squares] = [0, 0, 0];
  for (const [i, [x, y]] of pixels.offsets.entries()) {
    const [east, north] = maps.offsets[i]!;
    sumA += x * east - y * north;
    sumB += y * east + x * north;
    squares += x * x + y * y;
  }
  const [a, b] = [sumA / squares, sumB / squares];
  const predict = ([px, py]: Xy): Xy => {
    const [x, y] = [px - pixels.mean[0], py - pixels.mean[1]];
    return [maps.mean[0] + a * x + b * y, maps.mean[1] + b * x - a * y];
  };
  const [c, d] = predict([0, 0]);
  return {
    refused: false,
    a,
    b,
    c,
    d,
    metresPerPixel: Math.hypot(a, b),
    rotationDeg: (Math.atan2(b, a) * 180) / Math.PI,
    predict,
    ...fitQuality(points, predict, 4),
  };
}
