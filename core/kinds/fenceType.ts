import { note, ownName } from './common.ts';
import { kind } from './describe.ts';
import { lengthM, looseReference, optional, whole } from './fields.ts';

const wires = { unit: 'wires', max: 30 } as const;

export const fenceType = kind('fenceType', {
  lists: ['drawing', 'keptPlan', 'handover', 'changes', 'exchange', 'network', 'counted', 'plain', 'placeless'],
  fields: {
    name: ownName,
    liveWires: whole({ ...wires, default: 1 }),
    earthWires: whole({ ...wires, default: 0 }),
    /** Plain wires that carry nothing. Absent (older files): nobody has said, and none are counted. */
    plainWires: optional(whole({ ...wires, default: 0 })),
    /** Barbed wires in the fence; they are never electrified. */
    barbedWires: whole({ ...wires, default: 0 }),
    /** Conductor of its live wires: id of a library conductor or of a `conductor` thing. */
    wireId: looseReference('conductor', { default: 'steel-2.5' }),
    /** Conductor of its earth and plain wires, in the same way; absent: that of the live wires. */
    plainWireId: optional(looseReference('conductor')),
    postSpacingM: lengthM({ min: 0.5, max: 100, default: 10 }),
    note,
  },
});
