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
    role: choice(
      [
        ['strainer', 'Strainer'],
        ['angle', 'Angle post'],
        ['other', 'Other post that does not move'],
      ],
      { column: true, hint: 'A switch may be set at a strainer; tapes are measured from any post.' },
    ),
    note,
  },
});
