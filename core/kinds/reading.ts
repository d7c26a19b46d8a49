import { note, readVoltageV, switchIds, yardstick } from './common.ts';
import { kind } from './describe.ts';
import { date, looseReference, number, optional, orNone, place, shortText, text } from './fields.ts';

/** A voltage or current measured at a place on a date. */
export const reading = kind('reading', {
  lists: ['drawing', 'handover', 'changes', 'exchange', 'plain'],
  fields: {
    at: place(),
    /** ISO 8601 date or date and time, as written down. */
    date: date({ column: true }),
    /** Where it was read, in words. */
    place: optional(text({ column: true })),
    voltageV: orNone(readVoltageV, { column: true }),
    currentA: orNone(number('A', { max: 1000 }), { column: true }),
    openSwitchIds: switchIds,
    by: optional(text({ column: true })),
    meter: optional(text({ column: true })),
    /** Letter of the section, at that time. */
    section: optional(shortText()),
    weather: optional(text()),
    /** The run through the test sheets that it is part of. */
    runId: optional(looseReference('testRun')),
    /** What it was judged by when it was taken, as part of a run. */
    yardstick: optional(yardstick),
    note,
  },
});
