import fc from 'fast-check';
import { expect, it } from 'vitest';
import { thingSchema } from '../../../core/api/thingSchemas.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';
import { type GroundAnswer, withAnswer } from '../../../core/locate/inGround/answer.ts';
import { touchedBy } from '../../../core/locate/inGround/touched.ts';
import { fixedPosts } from '../../../core/locate/tieFrom.ts';
import { difference } from '../../../core/model/difference.ts';
import { allThings, type Project, putAll } from '../../../core/model/project.ts';
import { newBuriedPoint, newCrossingRecord } from '../../../core/model/recordDefaults.ts';
import type { BuriedPoint, TapeTie } from '../../../core/model/recordThings.ts';
import type { LonLat, Thing } from '../../../core/model/things.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { inEnglish } from '../../support/english.ts';
import { attempts, type Dice, dice, refusalOf } from '../../support/everyEdit.ts';
import { countingIds } from '../../support/ids.ts';
import { randomProject } from '../../support/randomProjects.ts';
import { placesInGround } from '../../support/recordedDrawing.ts';

/** What was recorded of one crossing. */
interface Recorded {
  readonly built: boolean;
  readonly points: readonly {
    readonly alongM: number;
    readonly leftM: number;
    readonly ties: number;
    readonly from: number;
  }[];
  readonly sideSaid: boolean;
  readonly depthM: number | null;
}

const recorded: fc.Arbitrary<Recorded> = fc.record({
  built: fc.boolean(),
  points: fc.array(
    fc.record({
      alongM: fc.integer({ min: -10, max: 60 }).map((n) => n / 10),
      leftM: fc.integer({ min: -20, max: 20 }).map((n) => n / 10),
      ties: fc.constantFrom(0, 2, 2, 3),
      from: fc.nat(20),
    }),
    { maxLength: 3 },
  ),
  sideSaid: fc.boolean(),
  depthM: fc.option(fc.integer({ min: 5, max: 90 }).map((n) => n / 100)),
});

/** The drawing with its lead-out built, and something recorded of each crossing as far as there are records. */
function withRecords(project: Project, records: readonly Recorded[]): Project {
  const survey = surveyOf(project);
  const posts = fixedPosts(project, survey);
  const roles = ['startFoot', 'bend', 'endFoot'] as const;
  const things = [...project.crossing.values()].flatMap((crossing, i): Thing[] => {
    const record = records[i % Math.max(1, records.length)];
    const shape = survey.gateways.get(crossing.gatewayId);
    if (!record || !shape) return [];
    const [[sx, sy], bearing] = [shape.startPost, (shape.bearingDeg * Math.PI) / 180];
    const own = posts.filter(({ from }) => from.on === 'gatePost' && from.gatewayId === crossing.gatewayId);
    const points = record.points.map(({ alongM, leftM, ties, from }, k): BuriedPoint => {
      const xy: Xy = [
        sx + alongM * Math.sin(bearing) - leftM * Math.cos(bearing),
        sy + alongM * Math.cos(bearing) + leftM * Math.sin(bearing),
      ];
      const used = [...own, posts[from % posts.length]!].slice(0, ties);
      const point = newBuriedPoint(`${crossing.id} ${k}`, crossing.id, roles[k]!, k);
      const tapes = used.map(({ from: post, name, at: postAt, xy: stands }): TapeTie => {
        return { from: post, postName: inEnglish(name), postAt, distanceM: xyDistanceM(stands, xy), seM: 0.02 };
      });
      const side = record.sideSaid ? (leftM >= 0 ? ('left' as const) : ('right' as const)) : null;
      return { ...point, ties: tapes, side, offset: ties === 0 ? { alongM, leftM } : null };
    });
    const depths = record.depthM === null ? [] : [{ alongM: 1, depthM: record.depthM }];
    return [
      { ...crossing, status: record.built ? 'built' : 'planned' },
      ...(depths.length > 0 ? [{ ...newCrossingRecord(crossing.id), depths }] : []),
      ...points,
    ];
  });
  const leadOuts = [...project.leadOut.values()].map((leadOut) => ({ ...leadOut, status: 'built' as const }));
  return putAll(project, [...things, ...leadOuts]);
}

function edited(before: Project, name: string, thrown: Dice, answer: GroundAnswer, ids: number): Project | null {
  const edit = attempts[name]!(before, thrown);
  if (!edit || refusalOf(edit, before)) return null;
  const after = edit(before);
  const touch = touchedBy(before, after, difference(before, after));
  return withAnswer({ before, after, touch, newId: countingIds(ids), date: '2026-11-30' }, answer);
}

/** A tenth of a millimetre, in degrees. */
const sameDeg = 1e-9;

const isSame = (a: LonLat, b: LonLat) => Math.abs(a[0] - b[0]) < sameDeg && Math.abs(a[1] - b[1]) < sameDeg;

/** Along the same way, from either end. */
function runSame(now: readonly LonLat[], then: readonly LonLat[]): boolean {
  const straight = now.every((place, i) => isSame(place, then[i] ?? [0, 0]));
  const turned = now.every((place, i) => isSame(place, then[then.length - 1 - i] ?? [0, 0]));
  return now.length === then.length && (straight || turned);
}

/** Edits that write down where something in the ground lies. */
const sayWhere: ReadonlySet<string> = new Set(['recordCrossing', 'recordPoint', 'trackAsTrench']);

/** Edits of the price list: each writes a hundred things into the project, none of them in the ground. */
const ofPrices: ReadonlySet<string> = new Set(Object.keys(attempts).filter((name) => /Item|Kit|LabourRate/.test(name)));

it('whatever is edited, nothing in the ground moves or goes unless that is what was answered', () => {
  const names = Object.keys(attempts).filter((name) => !sayWhere.has(name) && !ofPrices.has(name));
  const edit = fc.record({ name: fc.constantFrom(...names), thrown: dice });
  const made = { edits: 0, asked: 0, left: 0 };
  fc.assert(
    fc.property(
      randomProject,
      fc.array(recorded, { minLength: 1, maxLength: 5 }),
      fc.array(edit, { minLength: 1, maxLength: 4 }),
      fc.constantFrom<GroundAnswer>('stays', 'dead'),
      (bare, records, edits, answer) => {
        let project = withRecords(bare, records);
        const lay = placesInGround(project);
        for (const [i, { name, thrown }] of edits.entries()) {
          // An edit that takes a record itself away is asked about, and does so.
          if (name === 'deleteThings' && deletesRecords(project, thrown)) continue;
          const after = edited(project, name, thrown, answer, 1000 * (i + 1));
          if (!after) continue;
          made.edits++;
          if (touchedBy(project, after, difference(project, after)).asked.length > 0) made.asked++;
          project = after;
        }
        made.left += project.inGround.size;
        const now = placesInGround(project);
        for (const [id, path] of lay) {
          const still = now.get(id);
          expect(still !== undefined, `${id} is still there after ${edits.map(({ name }) => name).join(', ')}`).toBe(
            true,
          );
          expect(
            runSame(still!, path),
            `${id} lies where it lay after ${edits.map(({ name }) => name).join(', ')}`,
          ).toBe(true);
        }
        for (const thing of allThings(project)) expect(thingSchema.safeParse(thing).success).toBe(true);
      },
    ),
    { seed: 61, numRuns: 1500, endOnFailure: true },
  );
  expect(made.edits).toBeGreaterThan(1000);
  expect(made.left).toBeGreaterThan(50);
}, 180_000);

/** Whether the random deletion picks a record, or what was left in the ground, by itself. */
function deletesRecords(project: Project, { n }: Dice): boolean {
  const things = [...allThings(project)].filter(({ kind }) => kind !== 'property' && kind !== 'fenceType');
  const first = n % things.length;
  return things
    .slice(first, first + 2)
    .some(({ kind }) => kind === 'buriedPoint' || kind === 'crossingRecord' || kind === 'inGround');
}
