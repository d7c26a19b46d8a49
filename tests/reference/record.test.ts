import { describe, expect, it } from 'vitest';
import { distanceM } from '../../core/geometry/geodesic.ts';
import { createLocalPlane } from '../../core/geometry/localPlane.ts';
import { nearestOnPolyline } from '../../core/geometry/polyline.ts';
import { scale, subtract, unit, xyDistanceM } from '../../core/geometry/vector.ts';
import { crossingThing } from '../../core/locate/buriedThings.ts';
import { type CrossingAsBuilt, crossingAt } from '../../core/locate/crossingAsBuilt.ts';
import { digCheck } from '../../core/locate/digCheck.ts';
import { tiesInWords } from '../../core/locate/tieWords.ts';
import { newCrossing, newFenceLine, newGateway, newProperty, startingFenceTypes } from '../../core/model/defaults.ts';
import { type Project, projectOf } from '../../core/model/project.ts';
import { newBuriedPoint } from '../../core/model/recordDefaults.ts';
import type { BuriedPoint, BuriedRole, TapeTie } from '../../core/model/recordThings.ts';
import type { LonLat, Thing } from '../../core/model/things.ts';
import { trackAsTrench } from '../../core/record/edits/trackAsTrench.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import type { Survey } from '../../core/survey/types.ts';
import { inEnglish } from '../support/english.ts';
import { referenceData } from './data.ts';

interface Candidate {
  lonLat: LonLat;
  radius95M: number;
  touching?: boolean;
}

interface Knowable {
  candidates?: Candidate[];
  certain?: boolean;
  contradictory?: boolean;
}

interface Case {
  id: string;
  gateway: { startPost: string; endPost: string; widthM: number };
  posts: Record<string, LonLat>;
  planned: { bowSide: 'left' | 'right'; depthM: number };
  measured: {
    points: {
      role: BuriedRole;
      ties: { post: string; distanceM: number; seM: number }[];
      side: 'left' | 'right' | null;
    }[];
    track?: { lonLats: LonLat[]; seM: number };
  };
  truth: { points: Partial<Record<BuriedRole, LonLat>>; trench: LonLat[] };
  knowable: { points: Record<string, Knowable> };
}

/** Source: crossings made up with GeographicLib's distances, own least squares and own integral, as the file's README says. */
const { cases } = referenceData<{ cases: Case[] }>('record-truth.json');
const taped = cases.filter(({ measured }) => !measured.track);

interface Tried {
  readonly example: Case;
  readonly project: Project;
  readonly survey: Survey;
  readonly crossing: CrossingAsBuilt;
}

/** The case as a property of this program: a fence through both gate posts, the other posts beside it. */
function tried(example: Case): Tried {
  const { posts, gateway, planned, measured } = example;
  const [start, end] = [posts[gateway.startPost]!, posts[gateway.endPost]!];
  const plane = createLocalPlane(start);
  const along = unit(subtract(plane.toXy(end), plane.toXy(start)));
  const beyond = (post: LonLat, byM: number): LonLat => {
    const [x, y] = plane.toXy(post);
    const [dx, dy] = scale(along, byM);
    return plane.toLonLat([x + dx, y + dy]);
  };
  const path = [beyond(start, -20), start, end, beyond(end, 20)];
  const widthM = distanceM(start, end);
  const atM = distanceM(path[0]!, start) + widthM / 2;
  const property = { ...newProperty('Invented', start), invented: true, placed: true };
  const gate = newGateway({ id: 'G', name: 'G', lineId: 'F', atM, widthM });
  const { bowSide, depthM } = planned;
  const crossing = { ...newCrossing('X', gate, property.crossings), status: 'built' as const, bowSide, depthM };
  const others = Object.entries(posts).filter(([name]) => name !== gateway.startPost && name !== gateway.endPost);
  const things: Thing[] = [
    property,
    ...startingFenceTypes(),
    newFenceLine({ id: 'F', name: 'F', typeId: 'ft-2', path }),
    gate,
    crossing,
    ...others.map(([name, at]) => ({ kind: 'post', id: name, name, at, role: 'other', note: '' }) as const),
    ...measured.points.map((point) => buriedPoint(point, example)),
  ];
  const bare = projectOf(things);
  const survey = surveyOf(bare);
  const project = measured.track ? withTrack(bare, survey, measured.track) : bare;
  return { example, project, survey, crossing: crossingAt(project, survey, 'G')! };
}

function buriedPoint({ role, ties, side }: Case['measured']['points'][number], { posts, gateway }: Case): BuriedPoint {
  const fromOf = (post: string): TapeTie['from'] => {
    if (post !== gateway.startPost && post !== gateway.endPost) return { on: 'post', postId: post };
    return { on: 'gatePost', gatewayId: 'G', post: post === gateway.startPost ? 'start' : 'end' };
  };
  return {
    ...newBuriedPoint(role, 'X', role),
    side,
    ties: ties.map((tie) => ({ ...tie, from: fromOf(tie.post), postName: tie.post, postAt: posts[tie.post]! })),
  };
}

function withTrack(project: Project, survey: Survey, { lonLats, seM }: NonNullable<Case['measured']['track']>) {
  let count = 0;
  const newId = (kind: string) => `${kind}-${++count}`;
  return trackAsTrench({ crossingId: 'X', path: lonLats, seM }, survey, newId)(project);
}

const all = taped.map(tried);
const points = all.flatMap(({ example, survey, crossing }) =>
  Object.entries(example.knowable.points).map(([role, knowable]) => {
    const solved = crossing.points.find(({ point }) => point.role === role)!;
    const truth = survey.plane.toXy(example.truth.points[role as BuriedRole]!);
    return { name: `${example.id} ${role}`, knowable, solved, truth, survey, crossing };
  }),
);

const isTouching = ({ candidates = [] }: Knowable) => candidates.some(({ touching }) => touching);

/** At least this share of chances came true that come true 19 times in 20, with room for one unlucky file in a thousand. */
function nineteenInTwenty(count: number): number {
  return Math.floor(0.95 * count - 3.1 * Math.sqrt(count * 0.95 * 0.05));
}

const warns = ({ project, survey }: Tried, at: LonLat, errorM: number) =>
  digCheck(project, survey, { shape: 'point', path: [at], errorM, withinM: 0 }).findings.some(
    ({ thing, overlap }) => thing.kind === 'crossing' && overlap,
  );

describe('crossings whose true place is known', () => {
  it('has cases', () => expect(points.length).toBeGreaterThan(0));

  for (const { name, knowable, solved, survey } of points) {
    it(`${name}: no place that the tapes fit is missed`, () => {
      // Tapes that do not meet have no place; each two of them still do.
      const found = [...solved.places.map(({ xy }) => xy), ...solved.pairs];
      for (const { lonLat, radius95M, touching } of knowable.candidates ?? []) {
        const missM = Math.min(...found.map((xy) => xyDistanceM(xy, survey.plane.toXy(lonLat))));
        // Where the circles only touch, the best place is as flat as the radius is wide.
        expect(missM).toBeLessThanOrEqual(touching ? 0.02 * radius95M + 0.005 : 0.005);
      }
    });
  }

  it('calls no point measured that the tapes leave open, and none that they contradict', () => {
    for (const { name, knowable, solved, crossing } of points) {
      if (knowable.contradictory) expect(solved.basis, name).toBe('contradictory');
      else if ((knowable.candidates?.length ?? 0) > 1) expect(solved.basis, name).toBe('ambiguous');
      // Circles that only just touch are one place or two next to each other: both are told as unsure.
      else if (!isTouching(knowable)) expect(solved.basis, name).not.toBe('ambiguous');
      if (solved.basis !== 'measured') {
        expect(crossing.certainty.basis, name).not.toBe('measured');
        expect(crossing.certainty.basis, name).not.toBe('partly');
      }
    }
    const certain = points.filter(({ knowable }) => knowable.certain && !isTouching(knowable));
    const measured = certain.filter(({ solved }) => solved.basis === 'measured');
    expect(measured.length).toBeGreaterThanOrEqual(0.95 * certain.length);
  });

  it('says so in words', () => {
    for (const { name, solved } of points) {
      const words = inEnglish(tiesInWords(solved));
      if (solved.basis === 'ambiguous') expect(words, name).toContain('Nobody said which');
      if (solved.basis === 'contradictory') expect(words, name).toMatch(/do not meet|shorter than the posts are apart/);
    }
  });

  it('states radii that hold the true point 19 times in 20, and no more than twice as wide as need be', () => {
    const placed = points.filter(({ solved }) => solved.places.length > 0);
    const held = placed.filter(({ solved, truth }) =>
      solved.places.some(({ xy, withinM }) => xyDistanceM(xy, truth) <= withinM),
    );
    expect(held.length).toBeGreaterThanOrEqual(0.95 * placed.length);
    for (const { name, knowable, solved } of placed) {
      const least = Math.min(...(knowable.candidates ?? []).map(({ radius95M }) => radius95M));
      for (const { withinM, fix } of solved.places) {
        // Tapes that agree worse than they claim widen it.
        expect(withinM, name).toBeLessThanOrEqual(2 * least * Math.max(1, fix?.sigma0 ?? 1));
      }
    }
  });

  it('warns of a dig at any place that fits, and at the true trench', () => {
    let [asked, met] = [0, 0];
    for (const each of all) {
      for (const { candidates = [] } of Object.values(each.example.knowable.points)) {
        for (const { lonLat } of candidates) expect(warns(each, lonLat, 0), each.example.id).toBe(true);
      }
      for (const at of each.example.truth.trench) {
        expect(warns(each, at, 1), each.example.id).toBe(true);
        asked++;
        if (warns(each, at, 0)) met++;
      }
    }
    expect(met).toBeGreaterThanOrEqual(0.95 * asked);
  });

  it('lets the whole be no surer than what it leaves open', () => {
    for (const { solved, crossing, name } of points) {
      if (solved.basis !== 'ambiguous') continue;
      for (const { xy } of solved.places) {
        expect(crossing.certainty.withinM, name).toBeGreaterThan(nearestOnPolyline(xy, crossing.path)!.distanceM);
      }
      expect(crossingThing(crossing).ways.length, name).toBeGreaterThan(1);
    }
  });

  it('holds the true trench in the band about a track walked along it', () => {
    const walks = cases.filter(({ measured }) => measured.track).map(tried);
    const inBand = walks.filter((each) => each.example.truth.trench.every((at) => warns(each, at, 0)));
    expect(inBand.length).toBeGreaterThanOrEqual(nineteenInTwenty(walks.length));
  });
});
