import { keptWhile } from '../model/memo.ts';
import type { Gateway } from '../model/things.ts';
import { leastLengthM, lonLatAt, type MeasuredPath, wrapStation } from './measuredPath.ts';
import type { Posts } from './trench.ts';

export type SpanFault =
  /** Width or place is not a number above 0, or it lies wholly beyond the line: there is no opening. */
  'noOpening' | 'beyondLine' | 'widerThanLine';

/** Where a gateway's posts stand on its line, and what it opens. */
export interface GatewaySpan extends Posts {
  readonly gateway: Gateway;
  /**
   * Stations of the two posts, cut off at the ends of an open line. On a closed line over its closing vertex one of
   * them lies before 0 or past the length.
   */
  readonly fromM: number;
  readonly toM: number;
  /** Stretches of the line without wire: one, or two over the closing vertex of a closed line; none with `noOpening`. */
  readonly openings: readonly (readonly [fromM: number, toM: number])[];
  readonly fault: SpanFault | null;
  /** By how much it reaches past the line's ends, or the line's length where it is as wide as the line; else 0. */
  readonly faultM: number;
}

interface Stations {
  readonly fromM: number;
  readonly toM: number;
  readonly fault: SpanFault | null;
  readonly faultM: number;
}

/** The span of a gateway on its line; worked out once for each gateway and line. */
export const gatewaySpan = keptWhile((gateway: Gateway, line: MeasuredPath): GatewaySpan => {
  const stations = stationsOf(gateway, line);
  const { fromM, toM } = stations;
  const startPostAt = lonLatAt(line, wrapStation(fromM, line));
  const endPostAt = lonLatAt(line, wrapStation(toM, line));
  return {
    gateway,
    plane: line.plane,
    ...stations,
    openings: stations.fault === 'noOpening' ? [] : openingsOf(fromM, toM, line.lengthM),
    // By way of the earth, so that a post that was recorded there is where it was drawn.
    startPost: line.plane.toXy(startPostAt),
    endPost: line.plane.toXy(endPostAt),
    startPostAt,
    endPostAt,
  };
});

function stationsOf({ atM, widthM }: Gateway, { lengthM, closed }: MeasuredPath): Stations {
  const centreM = Number.isFinite(atM) ? Math.min(lengthM, Math.max(0, atM)) : 0;
  if (!(Number.isFinite(atM) && Number.isFinite(widthM) && widthM > 0) || lengthM <= leastLengthM) {
    return { fromM: centreM, toM: centreM, fault: 'noOpening', faultM: 0 };
  }
  if (widthM >= lengthM) return { fromM: 0, toM: lengthM, fault: 'widerThanLine', faultM: lengthM };
  const fromM = atM - widthM / 2;
  const toM = atM + widthM / 2;
  if (closed && atM >= 0 && atM <= lengthM) return { fromM, toM, fault: null, faultM: 0 };
  const beyondM = Math.max(0, -fromM) + Math.max(0, toM - lengthM);
  if (beyondM > widthM - leastLengthM) return { fromM: centreM, toM: centreM, fault: 'noOpening', faultM: beyondM };
  const fault = beyondM > leastLengthM ? 'beyondLine' : null;
  return { fromM: Math.max(0, fromM), toM: Math.min(lengthM, toM), fault, faultM: fault ? beyondM : 0 };
}

function openingsOf(fromM: number, toM: number, lengthM: number): (readonly [number, number])[] {
  if (fromM < 0) {
    return [
      [0, toM],
      [fromM + lengthM, lengthM],
    ];
  }
  if (toM > lengthM) {
    return [
      [0, toM - lengthM],
      [fromM, lengthM],
    ];
  }
  return [[fromM, toM]];
}
