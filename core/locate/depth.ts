import { largestOf, leastOf } from '../model/extremes.ts';
import type { Project } from '../model/project.ts';
import type { CrossingRecord } from '../model/recordThings.ts';
import type { CrossingFigures } from '../shapes/types.ts';
import type { Survey } from '../survey/types.ts';
import { type CrossingAsBuilt, crossingAt } from './crossingAsBuilt.ts';
import { recordOf } from './crossingSource.ts';
import { isInTheGround } from './inTheGround.ts';

export type MeasuredDepth = CrossingRecord['depths'][number];

/**
 * How deep a crossing lies: to the top of its pipe where that was measured, else the depth of its trench as planned.
 * Neither is turned into the other.
 */
export interface CrossingDepth {
  readonly measured: boolean;
  /** At how many places it was measured; between and beyond them nobody knows. */
  readonly places: number;
  /** The shallowest and the deepest. */
  readonly leastM: number;
  readonly mostM: number;
  /** Measured at places beyond the trench: they count for nothing, and have to be told of. */
  readonly leftOut: readonly MeasuredDepth[];
}

/** Depth at one place along the trench. */
export interface DepthThere {
  readonly depthM: number;
  /** measured: there. nearby: from the depths measured next to it. planned: none was measured. */
  readonly basis: 'measured' | 'nearby' | 'planned';
}

/** A tape along the ground may run past the end of the trench by this; an assumption of this project. */
const pastEndM = 0.5;
/** A depth this near was measured there. */
const thereM = 0.1;

type Asked = Pick<CrossingAsBuilt, 'record' | 'figures' | 'longestM'>;

export function depthOf({ record, figures, longestM }: Asked): CrossingDepth {
  const { within, leftOut } = sortedDepths(record?.depths ?? [], longestM);
  if (within.length === 0) return { ...plannedDepth(figures), leftOut };
  const all = within.map(({ depthM }) => depthM);
  return { measured: true, places: all.length, leastM: leastOf(all), mostM: largestOf(all), leftOut };
}

/** The depth of a trench of which nobody measured any. */
export function plannedDepth({ crossing }: Pick<CrossingFigures, 'crossing'>): CrossingDepth {
  return { measured: false, places: 0, leastM: crossing.depthM, mostM: crossing.depthM, leftOut: [] };
}

/** The same for the crossing of a gateway, and whether it lies in the ground. Only what was measured is worked out. */
export function depthAtGateway(
  project: Project,
  survey: Survey,
  figures: CrossingFigures,
): CrossingDepth & { readonly inGround: boolean } {
  const { crossing, gateway } = figures;
  const depths = recordOf(project, crossing.id)?.depths ?? [];
  const solved = depths.length > 0 ? crossingAt(project, survey, gateway.id) : null;
  return { ...(solved ? depthOf(solved) : plannedDepth(figures)), inGround: isInTheGround(project, crossing) };
}

/** The depths that lie along the trench, in order; of several at one place the shallowest. And those beyond its ends. */
export function sortedDepths(depths: readonly MeasuredDepth[], longestM: number) {
  const inOrder = depths.toSorted((a, b) => a.alongM - b.alongM || a.depthM - b.depthM);
  const isWithin = ({ alongM }: MeasuredDepth) => alongM >= -pastEndM && alongM <= longestM + pastEndM;
  const within = inOrder.filter(isWithin);
  return {
    within: within.filter(({ alongM }, i) => alongM !== within[i - 1]?.alongM),
    leftOut: inOrder.filter((depth) => !isWithin(depth)),
  };
}

/**
 * Depth at a place along the trench: as measured there, in a straight line between measured places, and the nearest
 * one's beyond the first and last. Without measurements the trench's own as planned.
 */
export function depthAt({ record, figures, longestM }: Asked, alongM: number): DepthThere {
  const { within } = sortedDepths(record?.depths ?? [], longestM);
  const there = within
    .filter((depth) => Math.abs(depth.alongM - alongM) <= thereM)
    .sort((a, b) => Math.abs(a.alongM - alongM) - Math.abs(b.alongM - alongM))[0];
  if (there) return { depthM: there.depthM, basis: 'measured' };
  const after = within.findIndex((depth) => depth.alongM >= alongM);
  const [a, b] = after === -1 ? [undefined, within.at(-1)] : [within[after - 1], within[after]];
  if (!b) return { depthM: figures.crossing.depthM, basis: 'planned' };
  if (!a) return { depthM: b.depthM, basis: 'nearby' };
  const depthM = a.depthM + ((b.depthM - a.depthM) * (alongM - a.alongM)) / (b.alongM - a.alongM);
  return { depthM, basis: 'nearby' };
}
