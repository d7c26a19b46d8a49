import type { LocalPlane } from '../../geometry/localPlane.ts';
import { createSpatialIndex } from '../../geometry/spatialIndex.ts';
import type { Xy } from '../../geometry/types.ts';
import { leastOf } from '../../model/extremes.ts';
import type { GroundHeights, HeightGrid, HeightsAlong } from '../../model/groundThings.ts';
import { measured } from '../../shapes/measuredPath.ts';
import { gridHeightM } from './gridHeight.ts';
import { levelledWay } from './levelledWay.ts';

/** The height of the ground at a place of the working plane, metres; null where it is not known. */
export interface HeightModel {
  readonly heightM: (xy: Xy) => number | null;
  /** Heights do not change from one place to the next nearer than this. */
  readonly stepM: number;
}

/** A way says how high the ground is this far beside it. Common practice, no source. */
const besideWayM = 15;
const wayStepM = 10;
const step = { leastM: 5, mostM: 50 } as const;
const metresPerDegree = 111_320;

/**
 * The ground by all heights that the property has: an elevation model before what was measured along ways, as it was
 * made for this; null where there are none.
 */
export function heightModelOf(grounds: Iterable<GroundHeights>, plane: LocalPlane): HeightModel | null {
  const all = [...grounds].map(({ heights }) => heights);
  const grids = all.filter((heights): heights is HeightGrid => heights.as === 'grid');
  const ways = all.filter((heights): heights is HeightsAlong => heights.as === 'along');
  if (all.length === 0) return null;
  const alongWays = ways.length > 0 ? waysModel(ways, plane) : () => null;
  const heightM = (xy: Xy): number | null => {
    if (grids.length > 0) {
      const lonLat = plane.toLonLat(xy);
      for (const grid of grids) {
        const found = gridHeightM(grid, lonLat);
        if (found !== null) return found;
      }
    }
    return alongWays(xy);
  };
  const steps = grids.map(({ stepLatDeg }) => stepLatDeg * metresPerDegree);
  const finest = Math.min(leastOf(steps), ...(ways.length > 0 ? [wayStepM] : []));
  return { heightM, stepM: Math.min(step.mostM, Math.max(step.leastM, finest)) };
}

function waysModel(all: readonly HeightsAlong[], plane: LocalPlane): HeightModel['heightM'] {
  const levelled = all.flatMap(({ ways, byReceiver }) =>
    ways.map(({ path, heightsM }) => levelledWay(measured(plane, path), heightsM, byReceiver)),
  );
  const index = createSpatialIndex(levelled.map(({ xy }, way) => [way, xy] as const));
  return (xy) => {
    const near = index.nearest(xy, besideWayM);
    if (!near) return null;
    const { heightsM } = levelled[near.key]!;
    const [from, to] = [heightsM[near.segment]!, heightsM[near.segment + 1] ?? heightsM[near.segment]!];
    return from + near.fraction * (to - from);
  };
}
