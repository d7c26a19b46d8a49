import { whyNotFields } from '../../model/edits/support/checkFields.ts';
import { type Edit, guarded } from '../../model/edits/support/edit.ts';
import { put } from '../../model/project.ts';
import { crossingRecordId, newCrossingRecord } from '../../model/recordDefaults.ts';
import type { CrossingRecord } from '../../model/recordThings.ts';

/** Writes fields into the record of a crossing, which begins with the first of them. `notValid`, `notFound`. */
export function recordCrossing(
  crossingId: string,
  to: Partial<Omit<CrossingRecord, 'kind' | 'id' | 'crossingId'>>,
): Edit {
  return guarded(
    (project) => whyNotFields(project, 'crossingRecord', null, { crossingId, ...to }),
    (project) => {
      const record = project.crossingRecord.get(crossingRecordId(crossingId)) ?? newCrossingRecord(crossingId);
      return put(project, { ...record, ...to });
    },
  );
}
