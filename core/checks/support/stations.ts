import type { Xy } from '../../geometry/types.ts';
import type { LineShape } from '../../shapes/types.ts';

/** The geodesic station of a place on a line's segment. */
export function stationOn({ stationsM }: LineShape, segment: number, fraction: number): number {
  const startM = stationsM[segment]!;
  return startM + fraction * (stationsM[segment + 1]! - startM);
}

/** The plane point at a station of a line. */
export function pointOn({ stationsM, xy }: LineShape, atM: number): Xy {
  let segment = 0;
  while (segment < xy.length - 2 && atM > stationsM[segment + 1]!) segment++;
  const lengthM = stationsM[segment + 1]! - stationsM[segment]!;
  const fraction = lengthM > 0 ? Math.min(1, Math.max(0, (atM - stationsM[segment]!) / lengthM)) : 0;
  const [a, b] = [xy[segment]!, xy[segment + 1]!];
  return [a[0] + (b[0] - a[0]) * fraction, a[1] + (b[1] - a[1]) * fraction];
}
