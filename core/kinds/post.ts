import { note, ownName } from './common.ts';
import { kind } from './describe.ts';
import { choice, place } from './fields.ts';

/** A point that does not move: tapes are measured from it, and a line that runs over a strainer can be cut there. */
export const post = kind('post', {
  prefix: 'P',
  lists: ['drawing', 'keptPlan', 'handover', 'changes', 'exchange', 'network', 'counted', 'plain'],
  fields: {
    name: ownName,
    at: place(),
    role: choice(['strainer', 'angle', 'other'], { column: true }),
    note,
  },
});
