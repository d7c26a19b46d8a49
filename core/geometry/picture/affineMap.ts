import type { Xy } from '../types.ts';

/** x' = a x + b y + c, y' = d x + e y + f. */
export interface AffineMap {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export function applyAffine({ a, b, c, d, e, f }: AffineMap, [x, y]: Xy): Xy {
  return [a * x + b * y + c, d * x + e * y + f];
}
