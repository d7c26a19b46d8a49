import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoThings } from '../../../../assets/demo/makeDemo.ts';
import { changesSchema } from '../../../../core/api/messageSchemas.ts';
import { readGeoJson } from '../../../../core/exchange/geojson/readGeoJson.ts';
import { writeGeoJson } from '../../../../core/exchange/geojson/writeGeoJson.ts';
import { importFeatures, usualChoices, whyNotImport } from '../../../../core/exchange/intake/importFeatures.ts';
import { difference } from '../../../../core/model/difference.ts';
import { whyNotFields } from '../../../../core/model/edits/support/checkFields.ts';
import { allThings, type Project, projectOf } from '../../../../core/model/project.ts';
import { surveyOf } from '../../../../core/survey/survey.ts';
import { allInEnglish, inEnglish } from '../../../support/english.ts';
import { countingIds } from '../../../support/ids.ts';
import { emptyProject } from '../../../support/randomProjects.ts';

const demo = projectOf(demoThings());
const whole = writeGeoJson(demo, surveyOf(demo));

/** Every third feature of the demo: all kinds, in a file small enough for thousands of rounds. */
const sample = ((): string => {
  const { features, ...head } = JSON.parse(whole) as { features: unknown[] };
  return JSON.stringify({ ...head, features: features.filter((_, i) => i % 3 === 0) });
})();

const hostile: readonly unknown[] = [
  null,
  true,
  '',
  'text',
  '<img src=x onerror=alert(1)>',
  0,
  -0,
  -1,
  91,
  181,
  1e308,
  -1e308,
  [],
  [[]],
  {},
  { type: 'Point' },
  { __proto__: null, constructor: 1 },
  'x'.repeat(100_000),
  Array.from({ length: 1000 }, () => [0, 0]),
];

/** Whatever is read is taken over as far as it can be; the old project stays as it was, and the new one is sound. */
function survive(text: string, project: Project, before: readonly unknown[]): 'refused' | 'read' {
  const read = readGeoJson(text);
  if (!read.ok) {
    expect(`${inEnglish(read.message)} ${inEnglish(read.remedy)}`).toMatch(/^[A-Z].*\. [A-Z].*\.$/s);
    return 'refused';
  }
  const { preview } = read;
  for (const { why, whatToDo } of preview.problems) {
    expect(inEnglish(why).length).toBeGreaterThan(0);
    expect(inEnglish(why).length).toBeLessThan(600);
    expect(inEnglish(whatToDo)).toMatch(/\.$/);
  }
  if (!whyNotImport(preview, project)) {
    const { project: after, problems } = importFeatures(
      preview,
      { ...usualChoices, typeId: 'ft-2' },
      project,
      countingIds(5000),
    );
    for (const { why } of problems) expect(inEnglish(why)).not.toMatch(/undefined/);
    const changes = difference(project, after);
    // The host takes what the import makes, whatever was in the file.
    expect(changesSchema.safeParse(changes).error).toBeUndefined();
    for (const change of changes) {
      const { kind, id, ...fields } = change.after!;
      expect(whyNotFields(after, kind, id, fields)).toBeNull();
    }
    expect(() => surveyOf(after)).not.toThrow();
  }
  expect([...allThings(project)]).toEqual(before);
  return 'read';
}

/** A place in parsed JSON, told by a list of numbers, and what to put there. */
function mutated(text: string, steps: readonly number[], value: unknown): string {
  const root = JSON.parse(text) as unknown;
  let holder: unknown = null;
  let field: string | number = '';
  let here: unknown = root;
  for (const step of steps) {
    if (typeof here !== 'object' || here === null) break;
    const fields = Object.keys(here);
    if (fields.length === 0) break;
    holder = here;
    field = fields[step % fields.length]!;
    here = (here as Record<string, unknown>)[field];
  }
  if (holder === null) return JSON.stringify(value);
  if (value === undefined) delete (holder as Record<string, unknown>)[field];
  else (holder as Record<string, unknown>)[field] = value;
  return JSON.stringify(root);
}

const things = [...allThings(demo)];
const emptyThings = [...allThings(emptyProject())];

describe('thousands of spoilt files', () => {
  it('with values exchanged for others, or left out, end with a word on each, the project untouched', () => {
    const steps = fc.array(fc.nat(400), { minLength: 1, maxLength: 8 });
    const value = fc.oneof(fc.constantFrom(...hostile, undefined), fc.jsonValue());
    const outcomes = { refused: 0, read: 0 };
    fc.assert(
      fc.property(steps, value, fc.boolean(), (path, put, intoDemo) => {
        const project = intoDemo ? demo : emptyProject();
        outcomes[survive(mutated(sample, path, put), project, intoDemo ? things : emptyThings)]++;
      }),
      { seed: 51, numRuns: 1200, endOnFailure: true },
    );
    expect(outcomes.read).toBeGreaterThan(500);
    expect(outcomes.refused).toBeGreaterThan(0);
  }, 120_000);

  it('cut off, or with characters changed, end with a word', () => {
    const change = fc.record({ at: fc.nat(sample.length - 1), with: fc.string({ maxLength: 4 }), drop: fc.nat(6) });
    const outcomes = { refused: 0, read: 0 };
    fc.assert(
      fc.property(fc.array(change, { maxLength: 4 }), fc.option(fc.nat(sample.length)), (changes, cutAt) => {
        let text = sample;
        for (const { at, with: put, drop } of changes) text = text.slice(0, at) + put + text.slice(at + drop);
        const spoilt = cutAt === null ? text : text.slice(0, cutAt);
        outcomes[survive(spoilt, emptyProject(), emptyThings)]++;
      }),
      { seed: 52, numRuns: 3000, endOnFailure: true },
    );
    expect(outcomes.refused).toBeGreaterThan(500);
    expect(outcomes.read).toBeGreaterThan(100);
  }, 120_000);

  it('of any JSON at all end with a word', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 6 }), (text) => void survive(text, emptyProject(), emptyThings)),
      { seed: 53, numRuns: 2000, endOnFailure: true },
    );
  });
});

describe('a large file', () => {
  it('of too many characters is refused before it is parsed', () => {
    const read = readGeoJson(`"${'x'.repeat(65 * 1024 * 1024)}"`);
    expect(allInEnglish(read)).toMatchObject({ ok: false, message: expect.stringContaining('MB') });
  });
});
