import { segmentIntersection } from '../../geometry/segments.ts';
import { xyDistanceM } from '../../geometry/vector.ts';
import { stationOf } from '../../shapes/measuredPath.ts';
import { planeOf } from '../../shapes/workingPlane.ts';
import { message } from '../../words/message.ts';
import type { Project } from '../project.ts';
import { refTo } from '../refTo.ts';
import type { FenceLine, LonLat } from '../things.ts';
import { type Edit, firstRefusal, guarded, type Refusal, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { pathIn, sameVertexM } from './support/path.ts';
import { relay, type SameCorner } from './support/relay.ts';

export interface FixCrossing {
  readonly lineId: string;
  readonly otherId: string;
  /** Near the crossing that is meant; two lines may cross more than once. */
  readonly near: LonLat;
}

/** Joins two fence lines where they cross: both get a vertex there, the same one. */
export function fixCrossing(wanted: FixCrossing): Edit {
  return guarded(whyNotFixCrossing(wanted), (project) => {
    const line = found(project, 'fenceLine', wanted.lineId);
    const other = found(project, 'fenceLine', wanted.otherId);
    const crossing = crossingNear(project, line, other, wanted.near)!;
    const repaired = withVertex(project, line, crossing.segment, crossing.at);
    return withVertex(repaired, other, crossing.otherSegment, crossing.at);
  });
}

/** `notFound`, `sameLine` (see `fixSelfCrossing`), `noCrossing`, `insideGateway`. */
export function whyNotFixCrossing({ lineId, otherId, near }: FixCrossing): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'fenceLine', lineId),
      () => whyNotFound(project, 'fenceLine', otherId),
      () => {
        const line = found(project, 'fenceLine', lineId);
        const other = found(project, 'fenceLine', otherId);
        if (line === other) return { code: 'sameLine', message: message('edits.lines.same') };
        const crossing = crossingNear(project, line, other, near);
        if (!crossing) {
          const both = { thing: refTo(line), other: refTo(other) };
          return { code: 'noCrossing', message: message('edits.lines.noCrossing', both) };
        }
        return (
          whyNotWire(project, line, crossing.segment, crossing.share) ??
          whyNotWire(project, other, crossing.otherSegment, crossing.otherShare)
        );
      },
    );
}

interface Found {
  readonly at: LonLat;
  readonly segment: number;
  readonly share: number;
  readonly otherSegment: number;
  readonly otherShare: number;
}

function crossingNear(project: Project, line: FenceLine, other: FenceLine, near: LonLat): Found | null {
  const plane = planeOf(project);
  const target = plane.toXy(near);
  const a = pathIn(project, line.path).xy;
  const b = pathIn(project, other.path).xy;
  let best: { awayM: number; found: Found } | null = null;
  for (let i = 0; i + 1 < a.length; i++) {
    for (let j = 0; j + 1 < b.length; j++) {
      const meeting = segmentIntersection(a[i]!, a[i + 1]!, b[j]!, b[j + 1]!);
      if (meeting.kind !== 'cross') continue;
      const awayM = xyDistanceM(target, meeting.point);
      if (best && awayM >= best.awayM) continue;
      const at = plane.toLonLat(meeting.point);
      best = { awayM, found: { at, segment: i, share: meeting.t, otherSegment: j, otherShare: meeting.u } };
    }
  }
  return best?.found ?? null;
}

/** In an opening there is no wire to join. */
function whyNotWire(project: Project, line: FenceLine, segment: number, share: number): Refusal | null {
  const atM = stationOf(pathIn(project, line.path), { segment, fraction: share });
  for (const gateway of project.gateway.values()) {
    if (gateway.lineId !== line.id || Math.abs(gateway.atM - atM) >= gateway.widthM / 2 - sameVertexM) continue;
    return {
      code: 'insideGateway',
      message: message('edits.lines.crossInOpening', { gateway: refTo(gateway) }),
    };
  }
  return null;
}

function withVertex(project: Project, line: FenceLine, segment: number, at: LonLat): Project {
  const path = line.path.toSpliced(segment + 1, 0, at);
  const corners = line.path.map((_, i): SameCorner => [i, i <= segment ? i : i + 1]);
  return relay(project, line, path, corners);
}
