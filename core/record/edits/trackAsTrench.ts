import { simplify } from '../../geometry/simplify.ts';
import { xyDistanceM } from '../../geometry/vector.ts';
import { type Edit, guarded, type NewId } from '../../model/edits/support/edit.ts';
import { found } from '../../model/edits/support/find.ts';
import { leastOf } from '../../model/extremes.ts';
import { type Project, propertyOf, putAll, removeAll } from '../../model/project.ts';
import { crossingRecordId, newBuriedPoint, newCrossingRecord } from '../../model/recordDefaults.ts';
import type { BuriedPoint, BuriedRole } from '../../model/recordThings.ts';
import type { LonLat } from '../../model/things.ts';
import type { GatewayShape } from '../../shapes/types.ts';
import type { Survey } from '../../survey/types.ts';
import { message } from '../../words/message.ts';

/** A track further than this from its gateway belongs to something else. */
const mostAwayM = 50;
/** Vertices that stray less from the line between their neighbours say nothing. */
const toleranceM = 0.1;

export interface TrenchTrack {
  readonly crossingId: string;
  readonly path: readonly LonLat[];
  /** Standard error of the receiver's positions. */
  readonly seM: number;
}

/**
 * Takes a track that was walked along the open trench as its path: its ends become the riser feet, what lies between
 * further points, all by GPS. Points that were taped keep their tapes, which count before GPS; those of an earlier track
 * go. Refused: `notFound`, `notPlaced`, `tooShort`, `tooFar`.
 */
export function trackAsTrench({ crossingId, path, seM }: TrenchTrack, survey: Survey, newId: NewId): Edit {
  const shapeIn = (project: Project) => survey.gateways.get(found(project, 'crossing', crossingId).gatewayId);
  return guarded(
    (project) => {
      const shape = shapeIn(project);
      if (!propertyOf(project).placed) {
        return { code: 'notPlaced', message: message('edits.record.trackNotPlaced') };
      }
      if (!shape || path.length < 2) {
        return {
          code: 'tooShort',
          message: message('edits.record.trackTooShort'),
        };
      }
      const awayM = leastOf(path.map((at) => xyDistanceM(survey.plane.toXy(at), shape.centre)));
      if (awayM <= mostAwayM) return null;
      const values = { awayM, name: shape.gateway.name };
      return { code: 'tooFar', message: message('edits.record.trackTooFar', values) };
    },
    (project) => {
      const places = fromStart(path, survey, shapeIn(project)!);
      const old = [...project.buriedPoint.values()].filter((point) => point.crossingId === crossingId);
      const onlyGps = old.filter(({ role, ties, offset }) => role === 'point' && ties.length === 0 && offset === null);
      const made = places.map((lonLat, i): BuriedPoint => {
        const role: BuriedRole = i === 0 ? 'startFoot' : i === places.length - 1 ? 'endFoot' : 'point';
        const known = role === 'point' ? undefined : old.find((point) => point.role === role);
        const rank = role === 'point' ? i : 0;
        return { ...(known ?? newBuriedPoint(newId('buriedPoint'), crossingId, role, rank)), gps: { lonLat, seM } };
      });
      const record = project.crossingRecord.get(crossingRecordId(crossingId)) ?? newCrossingRecord(crossingId);
      return putAll(removeAll(project, onlyGps), [{ ...record, route: 'points' }, ...made]);
    },
  );
}

/** The track with few points, from the start post's side to the end post's. */
function fromStart(path: readonly LonLat[], { plane }: Survey, { startPost }: GatewayShape): LonLat[] {
  const xy = simplify(path.map(plane.toXy), toleranceM);
  const turned = xyDistanceM(xy[0]!, startPost) > xyDistanceM(xy.at(-1)!, startPost);
  return (turned ? xy.toReversed() : xy).map(plane.toLonLat);
}
