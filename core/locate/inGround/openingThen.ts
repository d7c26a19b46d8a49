import { xyDistanceM } from '../../geometry/vector.ts';
import type { WasCrossing } from '../../model/inGroundThings.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import { crossingRecordId, newCrossingRecord } from '../../model/recordDefaults.ts';
import type { RecordedOpening } from '../../model/recordThings.ts';
import type { Crossing, Gateway } from '../../model/things.ts';
import type { GatewaySpan } from '../../shapes/gatewaySpan.ts';

/** The record of a crossing with the opening that it has in this drawing, unless it holds an earlier one. */
export function recordWithOpening(
  project: Project,
  gateway: Gateway,
  crossing: Crossing,
  span: Pick<GatewaySpan, 'startPost' | 'endPost' | 'startPostAt' | 'endPostAt'>,
): WasCrossing['record'] {
  const record = project.crossingRecord.get(crossingRecordId(crossing.id)) ?? newCrossingRecord(crossing.id);
  return { ...record, opening: record.opening ?? openingOf(project, gateway, crossing, span) };
}

function openingOf(
  project: Project,
  { hungFrom }: Gateway,
  { bowM, bowSide }: Crossing,
  {
    startPost,
    endPost,
    startPostAt,
    endPostAt,
  }: Pick<GatewaySpan, 'startPost' | 'endPost' | 'startPostAt' | 'endPostAt'>,
): RecordedOpening {
  const assumedM = propertyOf(project).crossings.bowShare * xyDistanceM(startPost, endPost);
  return { startPostAt, endPostAt, hungFrom, bowSide, bowM: bowM === null ? assumedM : Math.abs(bowM) };
}
