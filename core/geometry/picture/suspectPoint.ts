import type { ControlPoint, FitQuality, NoFit } from '../controlPoint.ts';
import type { Xy } from '../types.ts';

type Fit = (
  points: readonly ControlPoint[],
) => ((FitQuality & { readonly predict: (pixel: Xy) => Xy }) | NoFit) & { readonly refused: boolean };

/** The chance at which a point is taken for a blunder where there is none: common practice. */
const level = 0.05;
/** Of the ground; below it nothing is worth a word. */
const leastM = 0.05;

/**
 * Index of the one control point that spoils a fit, or null. Least squares spreads a blunder over all residuals, so each
 * point is left out in turn. With two coordinates less the sum of squares falls from S to S'; by chance alone it falls
 * so far with probability (S'/S)^(f/2), f being the coordinates to spare without the point (the F distribution with 2 and f
 * degrees of freedom, whose integral is closed). The level is shared among the points, as Bonferroni has it.
 */
export function suspectPoint(points: readonly ControlPoint[], fitTo: Fit, leastPoints: number): number | null {
  const freedom = 2 * (points.length - 1 - leastPoints);
  if (freedom < 2) return null;
  const whole = fitTo(points);
  if (isRefused(whole) || whole.rmsM < leastM) return null;
  let best: { index: number; squares: number } | null = null;
  for (const index of points.keys()) {
    const without = fitTo(points.filter((_, i) => i !== index));
    if (isRefused(without)) continue;
    const squares = without.rmsM ** 2 * (points.length - 1);
    if (!best || squares < best.squares) best = { index, squares };
  }
  if (!best) return null;
  const chance = (best.squares / (whole.rmsM ** 2 * points.length)) ** (freedom / 2);
  return chance < level / points.length ? best.index : null;
}

function isRefused(fit: ReturnType<Fit>): fit is NoFit {
  return fit.refused;
}
