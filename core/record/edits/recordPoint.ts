import { whyNotFields } from '../../model/edits/support/checkFields.ts';
import { type Edit, firstRefusal, guarded, type WhyNot } from '../../model/edits/support/edit.ts';
import { put } from '../../model/project.ts';
import { newBuriedPoint } from '../../model/recordDefaults.ts';
import type { BuriedPoint } from '../../model/recordThings.ts';
import { message } from '../../words/message.ts';

export interface RecordPoint {
  readonly id: string;
  readonly crossingId: string;
  readonly role: BuriedPoint['role'];
  /** Among the points between the feet. */
  readonly rank: number;
  readonly to: Partial<Omit<BuriedPoint, 'kind' | 'id' | 'crossingId' | 'role'>>;
}

/** Writes down what was measured of a buried point, which begins with the first of it. */
export function recordPoint(wanted: RecordPoint): Edit {
  return guarded(whyNotRecordPoint(wanted), (project) => {
    const { id, crossingId, role, rank, to } = wanted;
    return put(project, { ...(project.buriedPoint.get(id) ?? newBuriedPoint(id, crossingId, role, rank)), ...to });
  });
}

/** `notValid`, `notFound` (the crossing), `hasOne` (a foot or bend of this crossing is recorded already). */
function whyNotRecordPoint({ id, crossingId, role, rank, to }: RecordPoint): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFields(project, 'buriedPoint', id, { crossingId, role, rank, ...to }),
      () => {
        const isThere = [...project.buriedPoint.values()].some((other) => {
          return other.id !== id && other.crossingId === crossingId && other.role === role;
        });
        if (role === 'point' || !isThere) return null;
        return {
          code: 'hasOne',
          message: message('edits.record.hasPoint'),
        };
      },
    );
}
