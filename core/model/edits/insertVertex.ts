import { message } from '../../words/message.ts';
import type { Project } from '../project.ts';
import { refTo } from '../refTo.ts';
import type { FenceLine, LonLat } from '../things.ts';
import { type Edit, firstRefusal, guarded, type Refusal, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { sameVertex } from './support/path.ts';
import { relay, type SameCorner } from './support/relay.ts';
import { whyNotPoint } from './support/whyNotPath.ts';

export interface InsertVertex {
  readonly lineId: string;
  /** Between vertex `segment` and the next. */
  readonly segment: number;
  readonly at: LonLat;
}

/** Puts a vertex between two others. */
export function insertVertex(wanted: InsertVertex): Edit {
  return guarded(whyNotInsertVertex(wanted), (project) => {
    const line = found(project, 'fenceLine', wanted.lineId);
    const path = line.path.toSpliced(wanted.segment + 1, 0, wanted.at);
    const corners = line.path.map((_, i): SameCorner => [i, i <= wanted.segment ? i : i + 1]);
    return relay(project, line, path, corners);
  });
}

/** `notFound`, `noSuchSegment`, `outOfRange`, `tooFar`, `doubledVertex`. */
export function whyNotInsertVertex({ lineId, segment, at }: InsertVertex): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'fenceLine', lineId),
      () => whyNotSegment(found(project, 'fenceLine', lineId), segment),
      () => whyNotPoint(project, at),
      () => whyNotBetween(project, found(project, 'fenceLine', lineId), segment, at),
    );
}

function whyNotSegment(line: FenceLine, segment: number): Refusal | null {
  if (Number.isInteger(segment) && segment >= 0 && segment < line.path.length - 1) return null;
  return { code: 'noSuchSegment', message: message('edits.corners.noStraight', { line: refTo(line) }) };
}

function whyNotBetween(project: Project, line: FenceLine, segment: number, at: LonLat): Refusal | null {
  if (!sameVertex(project, line.path[segment]!, at) && !sameVertex(project, line.path[segment + 1]!, at)) return null;
  return { code: 'doubledVertex', message: message('edits.corners.doubledHere', { line: refTo(line) }) };
}
