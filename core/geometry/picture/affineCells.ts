import type { Xy } from '../types.ts';
import { type AffineMap, applyAffine } from './affineMap.ts';

/** A rectangle of a picture and the affine map that lays it down, right to the tolerance that was asked for. */
export interface AffineCell {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly map: AffineMap;
}

const deepest = 6;

/**
 * Cuts a rectangle of a picture into cells that may each be drawn by one affine map: nowhere on a cell's corners, sides'
 * middles or middle is that off by more than `toleranceM`. Most pictures need one cell.
 */
export function affineCells(
  toXy: (pixel: Xy) => Xy,
  [x, y, width, height]: readonly [number, number, number, number],
  toleranceM: number,
  depth = 0,
): AffineCell[] {
  const at = (u: number, v: number) => toXy([x + u * width, y + v * height]);
  const [nw, ne, sw, se] = [at(0, 0), at(1, 0), at(0, 1), at(1, 1)];
  const map = affineThrough(nw, ne, sw, se, { x, y, width, height });
  const probes: readonly (readonly [number, number])[] = [
    [0, 0],
    [0.5, 0],
    [0, 0.5],
    [0.5, 0.5],
    [1, 0.5],
    [0.5, 1],
  ];
  const isGood = probes.every(([u, v]) => {
    const [east, north] = at(u, v);
    const [mappedEast, mappedNorth] = applyAffine(map, [x + u * width, y + v * height]);
    return Math.hypot(east - mappedEast, north - mappedNorth) <= toleranceM;
  });
  if (isGood || depth >= deepest) return [{ x, y, width, height, map }];
  const [halfWidth, halfHeight] = [width / 2, height / 2];
  return [
    [x, y],
    [x + halfWidth, y],
    [x, y + halfHeight],
    [x + halfWidth, y + halfHeight],
  ].flatMap(([left, top]) => affineCells(toXy, [left!, top!, halfWidth, halfHeight], toleranceM, depth + 1));
}

/** The affine map that meets four corners best, in least squares. */
function affineThrough(
  nw: Xy,
  ne: Xy,
  sw: Xy,
  se: Xy,
  { x, y, width, height }: { x: number; y: number; width: number; height: number },
): AffineMap {
  const slopes = (axis: 0 | 1) => {
    const alongX = (ne[axis] + se[axis] - nw[axis] - sw[axis]) / (2 * width);
    const alongY = (sw[axis] + se[axis] - nw[axis] - ne[axis]) / (2 * height);
    const middle = (nw[axis] + ne[axis] + sw[axis] + se[axis]) / 4;
    return [alongX, alongY, middle - alongX * (x + width / 2) - alongY * (y + height / 2)] as const;
  };
  const [a, b, c] = slopes(0);
  const [d, e, f] = slopes(1);
  return { a, b, c, d, e, f };
}
