import { growth, note, ownName, status } from './common.ts';
import { kind } from './describe.ts';
import { flag, orNone, path, reference } from './fields.ts';

/** A drawn line of fence. A closed one repeats its first vertex at the end. */
export const fenceLine = kind('fenceLine', {
  prefix: 'F',
  lists: ['drawing', 'keptPlan', 'handover', 'changes', 'exchange', 'network', 'counted'],
  fields: {
    name: ownName,
    typeId: reference('fenceType', { column: 'fence_type' }),
    live: flag({ column: true, default: true }),
    path: path(2, { ownEdit: true }),
    /** `null` takes the property's. */
    growth: orNone(growth, { default: null }),
    status,
    note,
  },
});
