import type { Box } from '../../../core/geometry/box.ts';
import type { Xy } from '../../../core/geometry/types.ts';

/** A rectangle of the working plane as a picture: pixel (0, 0) is its north-west corner, y runs down. */
export interface View {
  /** Plane metres at the left edge. */
  readonly westM: number;
  /** Plane metres at the top edge. */
  readonly northM: number;
  readonly pxPerM: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A place in a picture, CSS pixels. */
export type Px = readonly [x: number, y: number];

export const toPx = (view: View, [x, y]: Xy): Px => [(x - view.westM) * view.pxPerM, (view.northM - y) * view.pxPerM];

export const toXy = (view: View, [x, y]: Px): Xy => [view.westM + x / view.pxPerM, view.northM - y / view.pxPerM];

/** What a picture shows of the plane, with a margin in pixels on every side. */
export function viewBox(view: View, marginPx = 0): Box {
  const west = view.westM - marginPx / view.pxPerM;
  const north = view.northM + marginPx / view.pxPerM;
  return [
    west,
    north - (view.heightPx + 2 * marginPx) / view.pxPerM,
    west + (view.widthPx + 2 * marginPx) / view.pxPerM,
    north,
  ];
}

/** Metres on the ground for one CSS pixel. */
export const metresPerPx = (view: View): number => 1 / view.pxPerM;
