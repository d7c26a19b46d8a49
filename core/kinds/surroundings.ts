import { note, ownName } from './common.ts';
import { kind, type ValueOf } from './describe.ts';
import { choice, flag, neverNothing, number, orNone, path, place } from './fields.ts';

/** The name of the paddock that holds the point `at`; the paddock's outline is found from the fences. */
export const paddock = kind('paddock', {
  prefix: 'Paddock ',
  lists: ['drawing', 'keptPlan', 'handover', 'changes', 'exchange', 'plain'],
  fields: { name: ownName, at: place(), note },
});

const what = choice(
  ['powerLine', 'waterPipe', 'gasPipe', 'dataCable', 'drain', 'road', 'path', 'creek', 'floodZone', 'earthElectrode'],
  { column: true },
);
export type ServiceKind = ValueOf<typeof what>;

/** What else is there: a line, an area (closed path) or a point (one vertex). */
export const service = kind('service', {
  prefix: 'Service ',
  lists: ['drawing', 'keptPlan', 'handover', 'changes', 'exchange', 'counted', 'plain'],
  fields: {
    name: ownName,
    what,
    path: path(1),
    /** Of a power line. The highest in use anywhere are a little over 1,000,000 V (value from memory). */
    voltageV: orNone(number('V', { above: true, max: 2_000_000, decimals: 0 }), {
      column: true,
    }),
    buried: flag({ column: true }),
    /** The public uses it (roads and paths). */
    open: orNone(choice(['public', 'private']), { column: 'open_to' }),
    note,
  },
});

/** A conductor that the user measured or read off a label. */
export const conductor = kind('conductor', {
  lists: ['drawing', 'keptPlan', 'handover', 'changes', 'exchange', 'counted', 'plain', 'placeless'],
  fields: {
    name: ownName,
    ohmPerKm: number('ohm/km', {
      min: 0.01,
      max: 1e6,
      file: neverNothing,
    }),
    note,
  },
});
