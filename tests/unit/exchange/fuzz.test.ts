import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changesSchema } from '../../../core/api/messageSchemas.ts';
import { importFeatures, usualChoices, whyNotImport } from '../../../core/exchange/intake/importFeatures.ts';
import { readAny } from '../../../core/exchange/readAny.ts';
import { difference } from '../../../core/model/difference.ts';
import { whyNotFields } from '../../../core/model/edits/support/checkFields.ts';
import { allThings } from '../../../core/model/project.ts';
import { inEnglish } from '../../support/english.ts';
import { countingIds } from '../../support/ids.ts';
import { emptyProject } from '../../support/randomProjects.ts';
import { mapFile, mapFileNames } from './mapFiles.ts';

const rounds = 1500;
/** One spoilt file takes this at most, many times what it should: it is small. */
const longestMs = 2000;

const project = emptyProject([168, -42]);
const before = [...allThings(project)];

/** Whatever is read is taken over as far as it can be; the old project stays as it was, and the new one is sound. */
function survive(name: string, bytes: Uint8Array): 'refused' | 'read' {
  const startedAt = performance.now();
  const read = readAny(name, bytes);
  if (!read.ok) {
    expect(`${inEnglish(read.message)} ${inEnglish(read.remedy)}`).toMatch(/^[^ ].*\. [A-Z].*\.$/s);
    expect(inEnglish(read.message)).not.toMatch(/undefined|\[object|NaN/);
    return 'refused';
  }
  const { preview } = read;
  for (const { why, whatToDo } of preview.problems) {
    expect(inEnglish(why)).not.toMatch(/undefined/);
    expect(inEnglish(whatToDo)).toMatch(/\.$/);
  }
  for (const { path } of preview.features) {
    expect(path.every(([lon, lat]) => Math.abs(lon) <= 180 && Math.abs(lat) <= 90)).toBe(true);
  }
  if (!whyNotImport(preview, project)) {
    const choices = { ...usualChoices, typeId: 'ft-2', simplifyM: 1, snapEndsM: 3, fileName: name };
    const { project: after } = importFeatures(preview, choices, project, countingIds(100));
    const changes = difference(project, after);
    // The host takes what the import makes, whatever was in the file.
    expect(changesSchema.safeParse(changes).error).toBeUndefined();
    for (const change of changes) {
      const { kind, id, ...fields } = change.after!;
      expect(whyNotFields(after, kind, id, fields)).toBeNull();
    }
  }
  expect([...allThings(project)]).toEqual(before);
  expect(performance.now() - startedAt).toBeLessThan(longestMs);
  return 'read';
}

const hostile = ['1e308', '-1e308', 'NaN', '<', '>', '&', '&x;', ']]>', '\0', '"', ',', '-', '99999999', '\uFFFF', 'é'];

/** Bytes exchanged, put in, or left out, and perhaps the end cut off. */
const spoiling = fc.record({
  changes: fc.array(
    fc.record({
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      put: fc.oneof(
        fc.uint8Array({ maxLength: 6 }),
        fc.constantFrom(...hostile).map((text) => new TextEncoder().encode(text)),
      ),
      drop: fc.nat(8),
    }),
    { maxLength: 5 },
  ),
  cutAt: fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { freq: 6 }),
});

function spoilt(
  bytes: Uint8Array,
  { changes, cutAt }: typeof spoiling extends fc.Arbitrary<infer T> ? T : never,
): Uint8Array {
  let now = Array.from(bytes);
  for (const { at, put, drop } of changes) now.splice(Math.floor(at * now.length), drop, ...put);
  if (cutAt !== null) now = now.slice(0, Math.floor(cutAt * now.length));
  return Uint8Array.from(now);
}

describe('thousands of spoilt files of each format end in time with a word, the project untouched', () => {
  it.each(mapFileNames)(
    '%s',
    (name) => {
      const sound = mapFile(name);
      expect(survive(name, sound)).toBe('read');
      const outcomes = { refused: 0, read: 0 };
      fc.assert(
        fc.property(spoiling, (how) => void outcomes[survive(name, spoilt(sound, how))]++),
        { seed: 61, numRuns: rounds, endOnFailure: true },
      );
      expect(outcomes.refused + outcomes.read).toBe(rounds);
      expect(outcomes.refused).toBeGreaterThan(rounds / 50);
      expect(outcomes.read).toBeGreaterThan(rounds / 50);
    },
    120_000,
  );

  it('and so do the parts of a Shapefile when each is spoilt by itself', async () => {
    const { unzipSync, zipSync } = await import('fflate');
    const parts = unzipSync(mapFile('layers.zip'));
    const names = Object.keys(parts);
    const outcomes = { refused: 0, read: 0 };
    fc.assert(
      fc.property(fc.constantFrom(...names), spoiling, (part, how) => {
        const packed = zipSync({ ...parts, [part]: spoilt(parts[part]!, how) }, { level: 0 });
        outcomes[survive('layers.zip', packed)]++;
      }),
      { seed: 62, numRuns: rounds, endOnFailure: true },
    );
    expect(outcomes.read).toBeGreaterThan(rounds / 5);
    expect(outcomes.refused).toBeGreaterThan(rounds / 50);
  }, 120_000);
});
