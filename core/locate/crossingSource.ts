import type { LocalPlane } from '../geometry/localPlane.ts';
import type { WasCrossing } from '../model/inGroundThings.ts';
import { keptFor } from '../model/memo.ts';
import { type Project, propertyOf } from '../model/project.ts';
import { crossingRecordId } from '../model/recordDefaults.ts';
import type { BuriedPoint, CrossingRecord, TapeTie } from '../model/recordThings.ts';
import type { CrossingFigures, GatewayShape } from '../shapes/types.ts';
import type { Survey } from '../survey/types.ts';
import { type Opening, openingAsRecorded, openingMovedM } from './recordedOpening.ts';
import { postOfTie, type StoodPost, samePostM } from './tieFrom.ts';

/**
 * All that says where a buried crossing lies: how it was drawn and what was recorded of it. A plain value, so that a
 * crossing is worked out the same way whether it is still in the drawing or not.
 */
export interface CrossingSource {
  /** Its gateway and itself, with its lengths as drawn. */
  readonly figures: CrossingFigures;
  /** The opening that it goes under. */
  readonly shape: GatewayShape;
  /** How far the gate's posts are drawn from there now, at most; 0 where they are drawn there, or no longer. Metres. */
  readonly movedM: number;
  readonly record: CrossingRecord | null;
  /** In order from the start post's foot to the end post's. */
  readonly points: readonly BuriedPoint[];
  /** The plane that all `xy` are in. */
  readonly plane: LocalPlane;
  /** The property has a place on earth, so that a receiver's positions mean something. */
  readonly placed: boolean;
  /** Where the post stands that a tape was held to. */
  readonly postOf: (tie: TapeTie) => StoodPost;
}

/** Gathers what there is of the crossing of a gateway; null where it has none, or an overhead one. */
export function crossingSource(project: Project, survey: Survey, gatewayId: string): CrossingSource | null {
  const figures = survey.crossings.get(gatewayId);
  const shape = survey.gateways.get(gatewayId);
  if (!figures || !shape || figures.crossing.method !== 'buried') return null;
  const { gateway, crossing } = figures;
  const { plane } = survey;
  const { placed, crossings: defaults } = propertyOf(project);
  const record = recordOf(project, crossing.id);
  const asked = { gateway, crossing, plane, defaults, drawn: shape };
  const opening = record?.opening ? openingAsRecorded(record.opening, asked) : { figures, shape };
  return {
    ...opening,
    movedM: movedM(opening, shape),
    record,
    points: pointsOf(project, crossing.id),
    plane,
    placed,
    postOf: (tie) => postOfTie(tie, project, survey),
  };
}

/** An opening and its crossing as it was dug, where its gate was moved since; else as drawn. */
export function openingDug(project: Project, survey: Survey, gatewayId: string): Opening | null {
  const [figures, shape] = [survey.crossings.get(gatewayId), survey.gateways.get(gatewayId)];
  return crossingSource(project, survey, gatewayId) ?? (figures && shape ? { figures, shape } : null);
}

/** The same of a crossing that was left in the ground and is drawn no longer. */
export function inGroundSource(project: Project, survey: Survey, was: WasCrossing): CrossingSource {
  const { gateway, crossing, record, points } = was;
  const { plane } = survey;
  const { placed, crossings: defaults } = propertyOf(project);
  const asked = { gateway, crossing, plane, defaults, drawn: null };
  const opening = openingAsRecorded(record.opening, asked);
  return {
    ...opening,
    movedM: movedM(opening, survey.gateways.get(gateway.id)),
    record,
    points: inOrder(points),
    plane,
    placed,
    postOf: (tie) => postOfTie(tie, project, survey),
  };
}

/** Less than a tape can tell counts as nothing. */
function movedM({ shape }: Opening, drawn: GatewayShape | undefined): number {
  const apartM = drawn ? openingMovedM(shape, drawn) : 0;
  return apartM < samePostM ? 0 : apartM;
}

/** The record of a crossing, or null. */
export function recordOf(project: Project, crossingId: string): CrossingRecord | null {
  return project.crossingRecord.get(crossingRecordId(crossingId)) ?? null;
}

const byCrossing = keptFor((points: Project['buriedPoint']) =>
  Map.groupBy(inOrder(points.values()), (point) => point.crossingId),
);

/** The buried points of a crossing, in order. Sorted out once for each state of the project. */
export function pointsOf({ buriedPoint }: Pick<Project, 'buriedPoint'>, crossingId: string): readonly BuriedPoint[] {
  return byCrossing(buriedPoint).get(crossingId) ?? [];
}

function inOrder(points: Iterable<BuriedPoint>): BuriedPoint[] {
  return [...points].sort((a, b) => (order(a) === order(b) ? 0 : order(a) - order(b)));
}

function order({ role, rank }: BuriedPoint): number {
  return role === 'startFoot' ? -Infinity : role === 'endFoot' ? Infinity : rank;
}
