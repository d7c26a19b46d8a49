import { message } from '../words/message.ts';
import { note, ownName, person } from './common.ts';
import { kind, type ValuesOf } from './describe.ts';
import { choice, date, flag, list, most, number, orNone, record, reference, shortText, text } from './fields.ts';

const resultFields = {
  /** The section's letter at that time. */
  section: shortText(),
  outcome: choice(['passed', 'failed', 'leftOut']),
  note,
};
export type TestResult = ValuesOf<typeof resultFields>;

/** A walk through the test sheets, section by section. Its readings carry its id. */
export const testRun = kind('testRun', {
  lists: ['record', 'handover', 'changes', 'exchange', 'plain'],
  fields: {
    name: ownName,
    /** ISO 8601 date of its beginning. */
    date: date(),
    by: person,
    meter: text(),
    weather: text(),
    /** Every section that was done or left out. */
    results: list(record(resultFields), {
      most: most.ids,
      mustBe: message('kinds.mustBe.results'),
    }),
    finished: flag(),
    note,
  },
});

/** No energiser gives more. */
const testV = number('V', { max: 20_000, decimals: 0 });

/** A test of an earth field: the fence loaded down far away, then the voltage of the earth measured. */
export const earthTest = kind('earthTest', {
  lists: ['record', 'handover', 'changes', 'exchange', 'plain'],
  fields: {
    earthFieldId: reference('earthField'),
    /** ISO 8601 date. */
    date: date(),
    /** Between the last rod and a probe as far off as the lead reaches. */
    earthV: { ...testV },
    /** Of the fence while it was loaded; null: not read. */
    fenceV: orNone(testV),
    by: person,
    meter: text(),
    weather: text(),
    /** How the fence was loaded. */
    load: text(),
    note,
  },
});
