import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { unknownLimits } from '../../../core/api/editLimits.ts';
import { changesSchema } from '../../../core/api/messageSchemas.ts';
import { readBody } from '../../../core/api/readBody.ts';
import { unknownFields } from '../../../core/api/unknownFields.ts';
import { bodyVersion } from '../../../core/kinds/upgrade.ts';
import { changeThing } from '../../../core/model/edits/changeThing.ts';
import { placeOnEarth } from '../../../core/model/edits/placeOnEarth.ts';
import { allThings, projectOf, propertyOf, put } from '../../../core/model/project.ts';
import type { KeptPlan, Thing } from '../../../core/model/things.ts';
import { goBackTo } from '../../../core/quantities/edits/keepPlan.ts';
import { changesSince } from '../../../core/record/changesSince.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { attempts, dice, refusalOf } from '../../support/everyEdit.ts';
import { fullProperty, underlay } from '../../support/fullProperty.ts';
import { changed, gone, made, post, startingThings } from '../../support/projectFile.ts';
import { randomProject } from '../../support/randomProjects.ts';
import { newer, objectsIn, withUnknown } from '../../support/withUnknown.ts';

const all: readonly Thing[] = [...fullProperty(), underlay];
const read = (thing: Thing) => readBody(thing.kind, bodyVersion, thing);

describe('a field that this version does not know', () => {
  test('is read and kept in every kind of thing, and in every object of it', () => {
    for (const thing of all) {
      const grown = withUnknown(thing);
      expect(read(grown)).toEqual({ ok: true, things: [grown] });
      expect(unknownFields(thing)).toEqual([]);
      const found = unknownFields(grown);
      expect(found).toHaveLength(objectsIn(thing));
      for (const { path, value } of found) {
        expect(path).toMatch(/(^|\.)newer$/);
        expect(value).toEqual(newer);
      }
    }
  });

  test('is no cover for what is wrong', () => {
    const wrong = { ...withUnknown(post('p')), at: [175.5, 91] } as Thing;
    expect(read(wrong)).toEqual({ ok: false, at: 'at.1' });
    expect(read({ ...withUnknown(post('p')), role: 'gate' } as unknown as Thing)).toEqual({ ok: false, at: 'role' });
  });

  test('is kept by an edit of the group that it stands in', () => {
    const project = projectOf(all.map(withUnknown));
    const crossings = { ...propertyOf(project).crossings, depthM: 0.7 };
    const edited = changeThing({ kind: 'property', id: 'property', to: { crossings } })(project);
    expect(propertyOf(edited)).toEqual({ ...propertyOf(project), crossings });
    expect(crossings).toMatchObject({ newer });
  });

  test('is kept by every edit in all things that it leaves', () => {
    fc.assert(
      fc.property(randomProject, fc.constantFrom(...Object.keys(attempts)), dice, (random, name, thrown) => {
        const project = projectOf([...allThings(random)].map(withUnknown));
        const edit = attempts[name]!(project, thrown);
        if (!edit || refusalOf(edit, project)) return;
        const after = edit(project);
        for (const before of allThings(project)) {
          const now = after[before.kind].get(before.id);
          if (!now) continue;
          expect(now, name).toMatchObject({ newer });
          const nested = (thing: Thing) => unknownFields(thing).map(({ path }) => path);
          if (objectsIn(now) >= objectsIn(before))
            expect(nested(now), name).toEqual(expect.arrayContaining(nested(before)));
        }
      }),
      { seed: 17, numRuns: 400 },
    );
  });
});

describe('from a window', () => {
  const big = (bytes: number) => ({ ...post('p'), newer: 'x'.repeat(bytes) });

  test('so much of it as a few new fields need', () => {
    expect(changesSchema.safeParse([made(withUnknown(post('p')))]).success).toBe(true);
    expect(changesSchema.safeParse([made(big(unknownLimits.bytes - 100))]).success).toBe(true);
  });

  test('no megabytes, unless the file holds them already', () => {
    const refused = changesSchema.safeParse([made(big(1_000_000))]);
    expect(refused.error?.issues[0]).toMatchObject({
      path: [0, 'after'],
      message: 'What this version does not know of post p takes 977 kB, and one thing can have 256 kB of it at most.',
    });
    expect(changesSchema.safeParse([changed(big(1_000_000), { ...big(1_000_000), name: 'P' })]).success).toBe(true);
    expect(changesSchema.safeParse([gone(big(1_000_000))]).success).toBe(true);
    expect(changesSchema.safeParse([changed(big(1_000), big(1_000_000))]).success).toBe(false);
  });

  test('none that nests without end', () => {
    let deep: unknown = 0;
    for (let i = 0; i < 100_000; i++) deep = [deep];
    const refused = changesSchema.safeParse([made({ ...post('p'), newer: deep } as Thing)]);
    expect(refused.error?.issues[0]?.message).toBe(
      'What this version does not know of post p nests more than 50 deep.',
    );
  });

  test('no thing of a kind that is not known', () => {
    const beacon = { kind: 'beacon', id: 'b' } as unknown as Thing;
    expect(changesSchema.safeParse([made(beacon)]).success).toBe(false);
  });
});

describe('a thing of a kind that this version does not know', () => {
  const beacon = { kind: 'beacon', id: 'b', light: { colour: 'red' } } as unknown as KeptPlan['things'][number];
  const drawn = projectOf(all);
  const plan: KeptPlan = {
    kind: 'keptPlan',
    id: 'plan',
    name: 'Plan',
    date: '2031-05-02',
    note: '',
    things: [propertyOf(drawn), beacon],
  };

  test('is kept in a handover and a kept plan, and seen by nobody', () => {
    const handover = { ...[...drawn.handover.values()][0]!, things: [propertyOf(drawn), beacon] };
    for (const thing of [plan, handover]) {
      expect(read(thing)).toEqual({ ok: true, things: [thing] });
      expect(unknownFields(thing)).toEqual([{ path: 'things.1', value: beacon }]);
    }
    expect(changesSince(handover, drawn, surveyOf(drawn)).map(({ kind }) => kind)).not.toContain('beacon');
    const back = goBackTo('plan')(put(drawn, plan));
    expect([...allThings(back)].map(({ kind }) => kind)).not.toContain('beacon');
    expect(back.keptPlan.get('plan')).toBe(plan);
  });

  test('takes no place that another thing must have', () => {
    const mark = [...drawn.builtMark.values()].find(({ planned }) => planned)!;
    expect(read({ ...mark, planned: { ...mark.planned!, thing: beacon } } as unknown as Thing).ok).toBe(false);
    const left = all.find(({ kind }) => kind === 'inGround') as Extract<Thing, { kind: 'inGround' }>;
    for (const part of ['gateway', 'points'] as const) {
      const was = { ...left.was, [part]: part === 'points' ? [beacon] : beacon };
      expect(read({ ...left, was } as unknown as Thing).ok, part).toBe(false);
    }
  });

  test('stays in them when the drawing is put on the earth', () => {
    const blank = put(projectOf(startingThings), { ...propertyOf(drawn), placed: false }, plan);
    const placed = placeOnEarth({ point: { grid: [0, 0], earth: [175, -38] }, gridNorthDeg: 0 })(blank);
    expect(placed.keptPlan.get('plan')!.things).toContain(beacon);
  });
});
