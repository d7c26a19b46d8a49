import { selfIntersections } from '../../geometry/segments.ts';
import { planeOf } from '../../shapes/workingPlane.ts';
import { message } from '../../words/message.ts';
import { type Project, propertyOf } from '../project.ts';
import { refTo } from '../refTo.ts';
import type { FenceLine } from '../things.ts';
import { insertVertex } from './insertVertex.ts';
import { type Edit, firstRefusal, guarded, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { pathIn } from './support/path.ts';

export interface FixSelfCrossing {
  readonly lineId: string;
}

/** Joins a line to itself wherever it crosses itself: two corners at each such place. */
export function fixSelfCrossing(wanted: FixSelfCrossing): Edit {
  return guarded(whyNotFixSelfCrossing(wanted), (project) => {
    let repaired = project;
    // Each round joins one place and makes no new one.
    for (let left = placesLeft(project, wanted.lineId); left > 0; left--) repaired = joinFirst(repaired, wanted.lineId);
    return repaired;
  });
}

/** `notFound`, `noCrossing`. */
export function whyNotFixSelfCrossing({ lineId }: FixSelfCrossing): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'fenceLine', lineId),
      () => {
        if (placesLeft(project, lineId) > 0) return null;
        const line = found(project, 'fenceLine', lineId);
        return {
          code: 'noCrossing',
          message: message('edits.lines.noSelfCrossing', { line: refTo(line) }),
        };
      },
    );
}

function placesLeft(project: Project, lineId: string): number {
  return crossingsOf(project, found(project, 'fenceLine', lineId)).length;
}

function joinFirst(project: Project, lineId: string): Project {
  const [first] = crossingsOf(project, found(project, 'fenceLine', lineId));
  if (first?.meeting.kind !== 'cross') return project;
  const at = planeOf(project).toLonLat(first.meeting.point);
  const [early, late] = first.segments;
  return insertVertex({ lineId, segment: early, at })(insertVertex({ lineId, segment: late, at })(project));
}

function crossingsOf(project: Project, { path }: FenceLine) {
  const { snapToleranceM } = propertyOf(project);
  return selfIntersections(pathIn(project, path).xy, snapToleranceM).filter(({ meeting }) => meeting.kind === 'cross');
}
