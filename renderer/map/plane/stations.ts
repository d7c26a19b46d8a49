import type { Xy } from '../../../core/geometry/types.ts';
import type { LineShape } from '../../../core/shapes/types.ts';

/** Stations are geodesic metres from a line's first vertex, as in the model; the shape's own plane lengths differ by parts in 100,000. */

/** The point of a line at a station; stations off the line give its ends. */
export function xyAtStation({ xy, stationsM }: LineShape, atM: number): Xy {
  const segment = segmentAt(stationsM, atM);
  const a = xy[segment]!;
  const b = xy[segment + 1] ?? a;
  const fromM = stationsM[segment]!;
  const lengthM = (stationsM[segment + 1] ?? fromM) - fromM;
  const share = lengthM > 0 ? Math.min(1, Math.max(0, (atM - fromM) / lengthM)) : 0;
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}

/** The direction of a line at a station, plane metres. */
export function directionAt(shape: LineShape, atM: number): Xy {
  const a = xyAtStation(shape, atM - 0.5);
  const b = xyAtStation(shape, atM + 0.5);
  return [b[0] - a[0], b[1] - a[1]];
}

/** The station of a point that lies a share of the way along a segment. */
export function stationOf({ stationsM }: LineShape, segment: number, fraction: number): number {
  const fromM = stationsM[segment]!;
  return fromM + fraction * ((stationsM[segment + 1] ?? fromM) - fromM);
}

/** The piece of a line between two stations, `fromM < toM`. */
export function sliceOfLine(shape: LineShape, fromM: number, toM: number): Xy[] {
  const { xy, stationsM } = shape;
  if (fromM <= 0 && toM >= shape.lengthM) return xy as Xy[];
  const piece: Xy[] = [xyAtStation(shape, fromM)];
  for (let i = segmentAt(stationsM, fromM) + 1; i < xy.length && stationsM[i]! < toM; i++) {
    if (stationsM[i]! > fromM) piece.push(xy[i]!);
  }
  piece.push(xyAtStation(shape, toM));
  return piece;
}

/** The segment that a station lies on, by halving. */
export function segmentAt(stationsM: readonly number[], atM: number): number {
  let low = 0;
  let high = Math.max(0, stationsM.length - 2);
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (stationsM[middle]! <= atM) low = middle;
    else high = middle - 1;
  }
  return low;
}
