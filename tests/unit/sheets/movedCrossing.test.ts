import { describe, expect, it } from 'vitest';
import {
  type CirclesItem,
  type Item,
  leafItems,
  type PaperPoint,
  type PathItem,
} from '../../../core/drawing/displayList.ts';
import { type MapWindow, mapWindow } from '../../../core/drawing/mapWindow.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { crossingAt } from '../../../core/locate/crossingAsBuilt.ts';
import { leftInGround } from '../../../core/locate/inGround/leftInGround.ts';
import { type Project, propertyOf, put } from '../../../core/model/project.ts';
import { newBuriedPoint, newCrossingRecord } from '../../../core/model/recordDefaults.ts';
import { crossingRegister } from '../../../core/record/crossingRegister.ts';
import { stakeOutAt } from '../../../core/sheets/find/stakeOutPages.ts';
import { stakeSketch } from '../../../core/sheets/find/stakeSketch.ts';
import { openingLayer } from '../../../core/sheets/map/openingLayer.ts';
import { shownThings } from '../../../core/sheets/map/shownThings.ts';
import { cardPlan } from '../../../core/sheets/pack/cardPlan.ts';
import { cardPoints } from '../../../core/sheets/pack/cardPoints.ts';
import type { PackInput } from '../../../core/sheets/pack/packInput.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { testSheets } from '../../../core/survey/testSheets.ts';
import { figures } from '../../../core/words/figures.ts';
import { at, bridgedGateway, drawing, line, strainer } from '../../support/drawings.ts';
import { drawingWithLeft } from '../../support/recordedDrawing.ts';
import { plainMeasure } from './plainMeasure.ts';

const built = { status: 'built' } as const;
const [gate, crossing] = bridgedGateway('G1', 'F1', 50, built);
const fence = line('F1', [
  [0, 0],
  [200, 0],
]);
const standing = drawing(fence, gate, { ...crossing, ...built }, strainer('P1', [55, 6]));
/** Dug when the gate stood at 48 to 52 m; it is hung at 150 m now, and four times as wide. */
const moved = put(
  standing,
  { ...gate, atM: 150, widthM: 16 },
  {
    ...newCrossingRecord('X-G1'),
    opening: { startPostAt: at([48, 0]), endPostAt: at([52, 0]), hungFrom: 'start', bowSide: 'left', bowM: 1 },
  },
);
/** The tapes to its bend do not meet: each two of them do. */
const astray = put(standing, {
  ...newBuriedPoint('b', 'X-G1', 'bend'),
  ties: [tape('start', [48, 0], 12), tape('end', [52, 0], 3), postTape(8)],
});

const frame = [0, 0, 120, 120] as const;
const pathsOf = (items: readonly Item[]) =>
  [...leafItems(items)].filter((item): item is PathItem => item.kind === 'path');
const circlesOf = (items: readonly Item[]) =>
  [...leafItems(items)].filter((item): item is CirclesItem => item.kind === 'circles');
const dashedOf = (items: readonly Item[]) => pathsOf(items).filter((item) => item.stroke?.dash);
const wordsOf = (items: readonly Item[]) =>
  [...leafItems(items)].flatMap((item) => (item.kind === 'text' ? [item.text] : [])).join(' ');

function layerAt(project: Project, centre: Xy, scale: number) {
  const survey = surveyOf(project);
  const window = mapWindow(frame, centre, scale, survey.plane);
  return { window, survey, ...openingLayer(project, survey, window, figures('metric'), plainMeasure) };
}

describe('a crossing whose gate was moved', () => {
  it('lies where it was dug, on the sheet of that place too', () => {
    const { items, labels, window, survey } = layerAt(moved, [50, 0], 200);
    const { path } = crossingAt(moved, survey, 'G1')!;
    const drawn = pathsOf(items);
    expect(drawn).toHaveLength(1);
    same(drawn[0]!.paths[0]!, path.map(window.toPaper));
    expect(labels.map(({ listedAs }) => listedAs)).toContain('crossing at G1');
    const shown = shownThings(moved, survey, window);
    expect(shown.crossings.map(({ id }) => id)).toEqual(['X-G1']);
    expect(shown.gateways).toEqual([]);
  });

  it('is magnified about the opening that it was dug under', () => {
    // 4 m are 0.4 mm at 1 to 10 000: shown as 2.4 mm, about where they lie.
    const { items, window } = layerAt(moved, [100, 0], 10_000);
    const [, y] = window.toPaper([50, 0]);
    const [first, last] = [dashedOf(items)[0]!.paths[0]![0]!, dashedOf(items)[0]!.paths[0]!.at(-1)!];
    expect((first[0] + last[0]) / 2).toBeCloseTo(window.toPaper([50, 0])[0], 3);
    expect((first[1] + last[1]) / 2).toBeCloseTo(y, 3);
    expect(Math.hypot(last[0] - first[0], last[1] - first[1])).toBeCloseTo(2.4, 2);
  });

  it('has one name with its gate where that stands still', () => {
    const { labels } = layerAt(standing, [50, 0], 200);
    expect(labels.flatMap(({ listedAs }) => listedAs ?? [])).toEqual(['G1']);
  });
});

describe('places where a trench may also lie', () => {
  const survey = surveyOf(astray);
  const found = crossingAt(astray, survey, 'G1')!;
  const input: PackInput = {
    project: astray,
    survey,
    property: propertyOf(astray),
    options: {
      parts: ['crossings'],
      paper: 'A4',
      orientation: 'portrait',
      scaleDenominator: null,
      handoverNumber: null,
      preparedBy: '',
      preparedFor: '',
      note: '',
      date: '2031-05-02',
    },
    date: '2031-05-02',
    measure: plainMeasure,
    f: figures('metric'),
    testSheets: testSheets(astray, survey),
    crossings: crossingRegister(astray, survey),
    takeOff: null,
    makeQr: () => [],
    photoBytes: () => null,
  };
  const shaded = (items: readonly Item[]) => circlesOf(items).filter(({ fill }) => fill === '#ececec');
  const card = cardPlan(found, cardPoints(found, figures('metric')), [0, 0, 120, 90], input);
  const look = { survey, f: figures('metric'), measure: plainMeasure, sizePt: 9 } as const;

  it('stand on the map beside the courses', () => {
    expect(found.spots.length).toBeGreaterThan(0);
    const { items, window } = layerAt(astray, [50, 0], 200);
    const rings = circlesOf(items).flatMap(({ centres, stroke }) => (stroke?.dash ? centres : []));
    expect(rings).toHaveLength(found.spots.length);
    for (const [i, { xy }] of found.spots.entries()) same([rings[i]!], [window.toPaper(xy)]);
  });

  it('are shaded on the card and the sketch, and inside their frames', () => {
    const sketch = stakeSketch(stakeOutAt(astray, survey, 'G1', figures('metric')).stake, 'end', [0, 0, 120, 90], look);
    for (const { items } of [card, sketch]) {
      const discs = shaded(items);
      expect(discs).toHaveLength(found.spots.length);
      for (const { centres, radius } of discs) {
        for (const [x, y] of centres) {
          expect(x - radius).toBeGreaterThan(0);
          expect(x + radius).toBeLessThan(120);
          expect(y - radius).toBeGreaterThan(0);
          expect(y + radius).toBeLessThan(81);
        }
      }
    }
  });

  it('are told of on the card of what lies in the ground only', () => {
    expect(wordsOf(card.items)).toContain('Shaded: it may lie here.');
    const plan = drawing(fence, bridgedGateway('G1', 'F1', 50));
    const planned = crossingAt(plan, surveyOf(plan), 'G1')!;
    const of = { ...input, project: plan, survey: surveyOf(plan) };
    const { items } = cardPlan(planned, cardPoints(planned, figures('metric')), [0, 0, 120, 90], of);
    expect(wordsOf(items)).toContain('Planned: not in the ground.');
    expect(wordsOf(items)).not.toContain('Shaded');
  });
});

describe('the legend of a sheet', () => {
  it('explains a left cable that crosses the sheet without a vertex on it', () => {
    const project = drawingWithLeft();
    const survey = surveyOf(project);
    const lead = leftInGround(project, survey).find(({ thing }) => thing.was.what === 'leadOut')!;
    const [[x1, y1], [x2, y2]] = [lead.path[0]!, lead.path[1]!];
    const middle: Xy = [(x1 + x2) / 2, (y1 + y2) / 2];
    const window: MapWindow = mapWindow([0, 0, 20, 20], middle, 100, survey.plane);
    expect(shownThings(project, survey, window).inGround).toContain(lead.thing);
  });
});

function tape(post: 'start' | 'end', xy: Xy, distanceM: number) {
  return {
    from: { on: 'gatePost', gatewayId: 'G1', post } as const,
    postName: '',
    postAt: at(xy),
    distanceM,
    seM: 0.02,
  };
}

function postTape(distanceM: number) {
  return { from: { on: 'post', postId: 'P1' } as const, postName: 'P1', postAt: at([55, 6]), distanceM, seM: 0.02 };
}

function same(points: readonly PaperPoint[], expected: readonly PaperPoint[]) {
  expect(points).toHaveLength(expected.length);
  for (const [i, [x, y]] of points.entries()) {
    expect(x).toBeCloseTo(expected[i]![0], 3);
    expect(y).toBeCloseTo(expected[i]![1], 3);
  }
}
