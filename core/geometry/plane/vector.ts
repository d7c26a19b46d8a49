/** Vector arithmetic on points of the working plane. */
import type { Xy } from '../types.ts';

export const add = (a: Xy, b: Xy): Xy => [a[0] + b[0], a[1] + b[1]];

export const subtract = (a: Xy, b: Xy): Xy => [a[0] - b[0], a[1] - b[1]];

export const scale = (a: Xy, factor: number): Xy => [a[0] * factor, a[1] * factor];

export const dot = (a: Xy, b: Xy): number => a[0] * b[0] + a[1] * b[1];

/** Positive when `b` lies to the left of `a`. */
export const cross = (a: Xy, b: Xy): number => a[0] * b[1] - a[1] * b[0];

/** A quarter turn to the left. */
export const turnLeft = (a: Xy): Xy => [-a[1], a[0]];

/** The point a given fraction of the way from `a` to `b`; exactly `a` at 0 and `b` at 1. */
export const between = (a: Xy, b: Xy, fraction: number): Xy =>
  fraction === 1 ? b : [a[0] + (b[0] - a[0]) * fraction, a[1] + (b[1] - a[1]) * fraction];

/** Direction of `a` with length 1; `[0, 0]` for a vector without length. */
export function unit(a: Xy): Xy {
  const length = Math.hypot(a[0], a[1]);
  return length === 0 ? [0, 0] : [a[0] / length, a[1] / length];
}
