import { lonLatAt, type NearestOnPath, nearestOn } from '../../shapes/measuredPath.ts';
import { planeOf } from '../../shapes/workingPlane.ts';
import { message } from '../../words/message.ts';
import { type Project, propertyOf } from '../project.ts';
import { refTo } from '../refTo.ts';
import type { FenceLine, LineEnd, LonLat } from '../things.ts';
import { moveVertex } from './moveVertex.ts';
import { type Edit, firstRefusal, guarded, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { joins } from './support/joins.ts';
import { pathIn } from './support/path.ts';

export interface JoinGap {
  readonly lineId: string;
  readonly end: LineEnd;
  /** The line that it nearly touches. */
  readonly toLineId: string;
}

/** A gap wider than this is no slip of the hand: it is drawn so. */
export const widestGapM = 10;

/** Moves an end of a line onto the nearest point of another, so that they join. What else ends there comes along. */
export function joinGap(wanted: JoinGap): Edit {
  return guarded(whyNotJoinGap(wanted), (project) => {
    const line = found(project, 'fenceLine', wanted.lineId);
    const index = wanted.end === 'start' ? 0 : line.path.length - 1;
    const to = landing(project, line.path[index]!, found(project, 'fenceLine', wanted.toLineId));
    return moveVertex({ lineId: line.id, index, to, heldLineId: wanted.toLineId })(project);
  });
}

/** `notFound`, `joined` (no gap), `tooWide`. */
export function whyNotJoinGap({ lineId, end, toLineId }: JoinGap): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'fenceLine', lineId),
      () => whyNotFound(project, 'fenceLine', toLineId),
      () => {
        const line = found(project, 'fenceLine', lineId);
        const other = found(project, 'fenceLine', toLineId);
        const point = end === 'start' ? line.path[0]! : line.path.at(-1)!;
        const gapM = nearestTo(project, other, point).distanceM;
        const { snapToleranceM } = propertyOf(project);
        const both = { thing: refTo(line), other: refTo(other) };
        if (gapM <= snapToleranceM) return { code: 'joined', message: message('edits.lines.joined', both) };
        if (gapM <= widestGapM) return null;
        return { code: 'tooWide', message: message('edits.lines.gapTooWide', { ...both, gapM }) };
      },
    );
}

/** The nearest point of a line; its end vertex or a corner where that is about as near. */
function landing(project: Project, from: LonLat, other: FenceLine): LonLat {
  const point = lonLatAt(pathIn(project, other.path), nearestTo(project, other, from).stationM);
  return other.path.find((vertex) => joins(project, vertex, point)) ?? point;
}

function nearestTo(project: Project, { path }: FenceLine, point: LonLat): NearestOnPath {
  return nearestOn(pathIn(project, path), planeOf(project).toXy(point));
}
