import { english } from '../../core/words/en.ts';
import { figures } from '../../core/words/figures.ts';
/** What is recorded on the demo property: crossings taped while their trenches were open, tests. All of it is invented. */

import type { Xy } from '../../core/geometry/types.ts';
import { add, scale, subtract, turnLeft, unit, xyDistanceM } from '../../core/geometry/vector.ts';
import { type FixedPost, fixedPosts } from '../../core/locate/tieFrom.ts';
import { addThing } from '../../core/model/edits/addThing.ts';
import { changeThing } from '../../core/model/edits/changeThing.ts';
import type { Edit, NewId } from '../../core/model/edits/support/edit.ts';
import type { Project } from '../../core/model/project.ts';
import { newBuriedPoint } from '../../core/model/recordDefaults.ts';
import type { BuriedRole, TapeTie } from '../../core/model/recordThings.ts';
import { markBuilt } from '../../core/record/edits/markBuilt.ts';
import { recordCrossing } from '../../core/record/edits/recordCrossing.ts';
import type { CrossingFigures, GatewayShape } from '../../core/shapes/types.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { testSheets } from '../../core/survey/testSheets.ts';
import type { Survey } from '../../core/survey/types.ts';

/** So many of the built crossings were taped; the others still lack it, as on any real farm. */
const mostRecorded = 10;
const tapeSeM = 0.02;
const tapeReachM = 30;
const dayOfWork = '2025-02-11';
const crew = 'the fencing crew';

const soils = ['Silt loam over gravel', 'Clay, wet in winter', 'Stony loam'];
const beside = ['Nothing else.', 'Water pipe to the trough, 0.2 m below.', ''];

/** The edits that write the records, on the finished drawing. */
export function recordEdits(project: Project, newId: NewId): Edit[] {
  const survey = surveyOf(project);
  const posts = fixedPosts(project, survey);
  const built = [...survey.crossings.values()].filter(({ crossing }) => crossing.status === 'built');
  return [
    ...built.slice(0, mostRecorded).flatMap((figures, i) => crossingEdits(figures, i, survey, posts, newId)),
    ...testEdits(project, survey, newId),
  ];
}

function crossingEdits(
  figures: CrossingFigures,
  i: number,
  survey: Survey,
  posts: readonly FixedPost[],
  newId: NewId,
): Edit[] {
  const { crossing, gateway } = figures;
  const shape = survey.gateways.get(gateway.id)!;
  const places = realPlaces(figures, shape, i);
  const depths = [0, 0.5, 1].map((share, k) => ({
    alongM: round(figures.trenchM * share),
    depthM: round(crossing.depthM + [0.02, 0.05, -0.03][k]! + (i % 3) * 0.01),
  }));
  return [
    // Some had been planned in the file before they were dug.
    ...(i % 3 === 0 ? [changeThing({ kind: 'crossing', id: crossing.id, to: { status: 'planned' } })] : []),
    markBuilt([{ kind: 'crossing', id: crossing.id }], { date: dayOfWork, by: crew }, survey),
    recordCrossing(crossing.id, {
      depths,
      jointsUnderground: i === 4 ? 1 : 0,
      jointsNote: i === 4 ? 'Resin joint, 0.5 m from the start riser.' : '',
      risers: { start: 'own steel post beside the gate post', end: 'gate post' },
      alsoInTrench: beside[i % beside.length]!,
      soil: soils[i % soils.length]!,
      recordedBy: crew,
      recordedOn: dayOfWork,
    }),
    ...places.map(([role, xy], k): Edit => {
      const ties = tiesTo(xy, posts, gateway.id, role === 'bend' && i % 2 === 0 ? 3 : 2);
      const point = { ...newBuriedPoint('', crossing.id, role, k), ties, side: sideOf(xy, ties, posts) };
      const { id: _, ...fields } = point;
      return addThing(fields, newId);
    }),
  ];
}

/** Where the crew really put it: near the plan, as far as a spade allows. */
function realPlaces(figures: CrossingFigures, { startPost, endPost }: GatewayShape, i: number): [BuriedRole, Xy][] {
  const along = unit(subtract(endPost, startPost));
  const out = scale(turnLeft(along), figures.crossing.bowSide === 'left' ? 1 : -1);
  const at = (from: Xy, alongM: number, outM: number) => add(from, add(scale(along, alongM), scale(out, outM)));
  const middle = scale(add(startPost, endPost), 0.5);
  return [
    ['startFoot', at(startPost, -0.2, 0.15)],
    ['bend', at(middle, 0.1, figures.bowM + [0.12, -0.08, 0.05, -0.15][i % 4]!)],
    ['endFoot', at(endPost, 0.25, 0.1)],
  ];
}

/** Tapes from both posts of the gate and, for a third, the nearest other post, read to the centimetre. */
function tiesTo(xy: Xy, posts: readonly FixedPost[], gatewayId: string, count: number): TapeTie[] {
  const own = posts.filter(({ from }) => from.on === 'gatePost' && from.gatewayId === gatewayId);
  const others = posts
    .filter((post) => !own.includes(post) && xyDistanceM(post.xy, xy) <= tapeReachM)
    .sort((a, b) => xyDistanceM(a.xy, xy) - xyDistanceM(b.xy, xy));
  return [...own, ...others].slice(0, count).map(({ from, name, at, xy: post }) => {
    return {
      from,
      postName: figures('metric', english).say(name),
      postAt: at,
      distanceM: round(xyDistanceM(post, xy)),
      seM: tapeSeM,
    };
  });
}

function sideOf(xy: Xy, [first, second]: readonly TapeTie[], posts: readonly FixedPost[]): 'left' | 'right' {
  const place = (tie: TapeTie) => posts.find(({ from }) => JSON.stringify(from) === JSON.stringify(tie.from))!.xy;
  const [a, b] = [place(first!), place(second!)];
  const turn = (b[0] - a[0]) * (xy[1] - a[1]) - (b[1] - a[1]) * (xy[0] - a[0]);
  return turn > 0 ? 'left' : 'right';
}

/** A run through the first test sheets, not finished, and a test of the earth stakes. */
function testEdits(project: Project, survey: Survey, newId: NewId): Edit[] {
  const sheets = testSheets(project, survey).slice(0, 2);
  const runId = 'testRun-1';
  const run = { by: 'the contractor', meter: 'peak-reading fence tester', weather: 'dry, light wind' };
  const volts = [7600, 7200, 6900, 7100, 6600, 6800];
  return [
    addThing(
      {
        kind: 'testRun',
        name: 'Commissioning',
        date: '2025-03-04',
        ...run,
        results: sheets.map(({ section }) => ({ section, outcome: 'passed' as const, note: '' })),
        finished: false,
        note: 'The sections that are still planned follow when they are built.',
      },
      newId,
    ),
    ...sheets.flatMap(({ section, open, readAt }) =>
      readAt.slice(0, 3).map(({ text, at }, k) =>
        addThing(
          {
            kind: 'reading',
            at,
            date: '2025-03-04',
            voltageV: volts[k % volts.length]! + (section === 'A' ? 200 : 0),
            currentA: null,
            openSwitchIds: open,
            place: figures('metric').say(text),
            section,
            ...run,
            runId,
            note: '',
          },
          newId,
        ),
      ),
    ),
    ...[...project.earthField.keys()].slice(0, 1).map((earthFieldId) =>
      addThing(
        {
          kind: 'earthTest',
          earthFieldId,
          date: '2025-03-04',
          earthV: 180,
          fenceV: 1700,
          ...run,
          load: 'steel bars against the live wires 160 m from the energiser',
          note: '',
        },
        newId,
      ),
    ),
  ];
}

function round(metres: number): number {
  return Math.round(metres * 100) / 100;
}
