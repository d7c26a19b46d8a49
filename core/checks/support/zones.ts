import type { Xy } from '../../geometry/types.ts';
import { stretchInZone } from '../../geometry/zone.ts';
import { keptForPair } from '../../model/memo.ts';
import { type MeasuredPath, stationOf } from '../../shapes/measuredPath.ts';
import { segmentBox, segmentsNear } from './segmentIndex.ts';

/** A stretch of a path, by its stations. */
export interface ZoneStretch {
  readonly fromM: number;
  readonly toM: number;
}

/** Stretches nearer to each other than this are one: rounding parts them. */
const joinedM = 1e-6;

/** The stretches of a path that lie within a distance of another, in order; exact. */
export const stretchesWithin = keptForPair(
  (path: Pick<MeasuredPath, 'xy' | 'stationsM'>, other: readonly Xy[], withinM: number): readonly ZoneStretch[] => {
    const { xy } = path;
    const found: ZoneStretch[] = [];
    for (let segment = 0; segment + 1 < xy.length; segment++) {
      const [a, b] = [xy[segment]!, xy[segment + 1]!];
      for (const i of segmentsNear(other, segmentBox(a, b, withinM))) {
        const inside = stretchInZone(a, b, other[i]!, other[i + 1] ?? other[i]!, withinM);
        if (!inside) continue;
        const [fromM, toM] = inside.map((fraction) => stationOf(path, { segment, fraction })) as [number, number];
        found.push({ fromM, toM });
      }
    }
    return merged(found);
  },
);

/** Stretches that overlap or meet, made one. */
function merged(found: ZoneStretch[]): ZoneStretch[] {
  const stretches: ZoneStretch[] = [];
  for (const next of found.sort((p, q) => p.fromM - q.fromM)) {
    const last = stretches.at(-1);
    if (!last || next.fromM > last.toM + joinedM) stretches.push(next);
    else if (next.toM > last.toM) stretches[stretches.length - 1] = { fromM: last.fromM, toM: next.toM };
  }
  return stretches;
}
