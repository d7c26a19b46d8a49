import type { Message } from '../words/message.ts';
import type { Xy } from './types.ts';

/** A place seen in a picture whose place on the map is known. */
export interface ControlPoint {
  /** Pixels, x to the right, y down. */
  readonly pixel: Xy;
  /** Metres, x east, y north. */
  readonly map: Xy;
}

export type WhyNoFit =
  | 'notANumber'
  | 'tooFewPoints'
  /** All of them at one place in the picture, or all at one place on the map. */
  | 'coincide'
  /** For an affine fit: all on one line in the picture or on the map, or only two different ones. */
  | 'inOneLine';

export interface NoFit {
  readonly refused: true;
  readonly reason: WhyNoFit;
  /** What is wrong and what to do, for the user. */
  readonly message: Message;
}

export function noFit(reason: WhyNoFit, message: Message): NoFit {
  return { refused: true, reason, message };
}

/** How well a fit meets its control points. Metres. */
export interface FitQuality {
  /** Given minus fitted, point by point. */
  readonly residuals: readonly { readonly eastM: number; readonly northM: number; readonly lengthM: number }[];
  /** sqrt(sum of squared lengths / points). */
  readonly rmsM: number;
  /** sqrt(sum of squared lengths / coordinates). */
  readonly rmsPerAxisM: number;
  /** Standard error of one coordinate; null where no coordinate is to spare, so that nothing checks the fit. */
  readonly sigma0M: number | null;
}

export function fitQuality(
  points: readonly ControlPoint[],
  predict: (pixel: Xy) => Xy,
  parameters: number,
): FitQuality {
  const residuals = points.map(({ pixel, map }) => {
    const [east, north] = predict(pixel);
    const [eastM, northM] = [map[0] - east, map[1] - north];
    return { eastM, northM, lengthM: Math.hypot(eastM, northM) };
  });
  const sum = residuals.reduce((total, { lengthM }) => total + lengthM ** 2, 0);
  const spare = 2 * points.length - parameters;
  return {
    residuals,
    rmsM: Math.sqrt(sum / points.length),
    rmsPerAxisM: Math.sqrt(sum / (2 * points.length)),
    sigma0M: spare > 0 ? Math.sqrt(sum / spare) : null,
  };
}

/** Points with their mean taken away, so that large coordinates cost no digits. */
export interface Centred {
  readonly mean: Xy;
  readonly offsets: readonly Xy[];
  /** Root mean square distance from the mean. */
  readonly spread: number;
}

export function centre(points: readonly Xy[]): Centred {
  const mean: Xy = [
    points.reduce((sum, [x]) => sum + x / points.length, 0),
    points.reduce((sum, [, y]) => sum + y / points.length, 0),
  ];
  const offsets = points.map(([x, y]): Xy => [x - mean[0], y - mean[1]]);
  const squares = offsets.reduce((sum, [x, y]) => sum + x * x + y * y, 0);
  return { mean, offsets, spread: Math.sqrt(squares / points.length) };
}

/** Whether centred points are all at one place, as nearly as their coordinates can tell. */
export function coincide({ mean, spread }: Centred): boolean {
  return spread <= 1e-12 * (1 + Math.abs(mean[0]) + Math.abs(mean[1]));
}

export function isFinitePoint({ pixel, map }: ControlPoint): boolean {
  return [...pixel, ...map].every(Number.isFinite);
}
