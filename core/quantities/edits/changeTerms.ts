import { whyNotFields } from '../../model/edits/support/checkFields.ts';
import { EditRefused } from '../../model/edits/support/edit.ts';
import { type Project, put, remove } from '../../model/project.ts';
import type { OrderSettings } from '../../model/things.ts';
import { orderSettingsOf } from '../takeOff.ts';

/** Changes what the order is worked out with: currency, tax, what is counted, the rules of counting. */
export function changeTerms(to: Partial<Omit<OrderSettings, 'kind' | 'id'>>): (project: Project) => Project {
  return (project) => {
    const refusal = whyNotFields(project, 'orderSettings', 'order', to);
    if (refusal) throw new EditRefused(refusal);
    return put(project, { ...orderSettingsOf(project), ...to });
  };
}

/** Says how many droppers stand between each two posts of a fence type. */
export function setDroppers(typeId: string, droppersPerBay: number): (project: Project) => Project {
  return (project) => {
    const refusal = whyNotFields(project, 'fenceMake', null, { droppersPerBay });
    if (refusal) throw new EditRefused(refusal);
    const known = project.fenceMake.get(`make:${typeId}`);
    if (known && droppersPerBay === 0) return remove(project, known);
    return put(project, { kind: 'fenceMake', id: `make:${typeId}`, typeId, droppersPerBay });
  };
}
