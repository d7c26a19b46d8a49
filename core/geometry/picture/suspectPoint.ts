import type { ControlPoint, FitQuality, NoFit } from '../controlPoint.ts';
import type { Xy } from '../types.ts';

type Fit = (
  points: readonly ControlPoint[],
) => ((FitQuality & { readonly predict: (pixel: Xy) => Xy }) | NoFit) & { readonly refused: boolean };

/** Without the bad point the others must agree this many times better. Assumption of this project. */
const timesBetter = 3;
/** Of the ground; below it nothing is worth a word. */
const leastM = 0.05;

/**
 * Index of the one control point that spoils a fit, or null. Least squares spreads a blunder over all residuals, so
 * each point is left out in turn: where the rest then agree much better, and the point lies far from where they put it,
 * it is the one to look at. At least one coordinate pair to spare must be left without it.
 */
export function suspectPoint(points: readonly ControlPoint[], fitTo: Fit, leastPoints: number): number | null {
  if (points.length < leastPoints + 2) return null;
  const whole = fitTo(points);
  if (isRefused(whole) || whole.rmsM < leastM) return null;
  let best: { index: number; rmsM: number } | null = null;
  for (const index of points.keys()) {
    const others = points.filter((_, i) => i !== index);
    const without = fitTo(others);
    if (!isRefused(without) && (!best || without.rmsM < best.rmsM)) best = { index, rmsM: without.rmsM };
  }
  return best && best.rmsM * timesBetter < whole.rmsM ? best.index : null;
}

function isRefused(fit: ReturnType<Fit>): fit is NoFit {
  return fit.refused;
}
