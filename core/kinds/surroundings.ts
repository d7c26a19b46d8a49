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
  [
    ['powerLine', 'Power line'],
    ['waterPipe', 'Water pipe'],
    ['gasPipe', 'Gas pipe'],
    ['dataCable', 'Data cable'],
    ['drain', 'Drain'],
    ['road', 'Road'],
    ['path', 'Path'],
    ['creek', 'Creek'],
    ['floodZone', 'Ground that floods'],
    ['earthElectrode', 'Earth of another system'],
  ],
  { label: 'What it is', column: true },
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
      hint: "The clearance depends on it: ask the line's owner.",
    }),
    buried: flag({ column: true }),
    /** The public uses it (roads and paths). */
    open: orNone(
      choice([
        ['public', 'The public'],
        ['private', 'This property only'],
      ]),
      { label: 'Used by', column: 'open_to' },
    ),
    note,
  },
});

/** A conductor that the user measured or read off a label. */
export const conductor = kind('conductor', {
  lists: ['drawing', 'keptPlan', 'handover', 'changes', 'exchange', 'counted', 'plain', 'placeless'],
  fields: {
    name: ownName,
    ohmPerKm: number('ohm/km', {
      label: 'Resistance',
      hint: 'As on the reel, or measured over a known length.',
      min: 0.01,
      max: 1e6,
      file: neverNothing,
    }),
    note: { ...note, hint: 'Where the figure is from.' },
  },
});
