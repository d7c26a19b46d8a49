import { describe, expect, it } from 'vitest';
import { leafItems, type PaperPoint } from '../../../core/drawing/displayList.ts';
import { mapWindow } from '../../../core/drawing/mapWindow.ts';
import { mmPerPt } from '../../../core/drawing/style.ts';
import { put } from '../../../core/model/project.ts';
import { newBuriedPoint, newCrossingRecord } from '../../../core/model/recordDefaults.ts';
import { digPages } from '../../../core/sheets/find/digPages.ts';
import { svgElements } from '../../../core/sheets/find/sketchSvg.ts';
import { stakeOutAt, stakeOutPages } from '../../../core/sheets/find/stakeOutPages.ts';
import { stakeSketch } from '../../../core/sheets/find/stakeSketch.ts';
import { openingLayer } from '../../../core/sheets/map/openingLayer.ts';
import { SheetProblem } from '../../../core/sheets/sheetProblem.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { figures } from '../../../core/words/figures.ts';
import { typefaces } from '../../../electron/print/typefaces.ts';
import { at, bridgedGateway, drawing, line, property, strainer } from '../../support/drawings.ts';

const project = put(
  drawing(
    line('F1', [
      [0, 0],
      [100, 0],
    ]),
    bridgedGateway('G1', 'F1', 50),
    strainer('P1', [55, 6]),
  ),
  { ...newBuriedPoint('b', 'X-G1', 'bend'), offset: { alongM: 2, leftM: 1.3 } },
);
const survey = surveyOf(project);
const { measure } = typefaces();
const input = { property: property(), date: '2026-05-01', measure, f: figures('metric') };

function wordsOf(items: Parameters<typeof leafItems>[0]): string[] {
  return [...leafItems(items)].flatMap((item) => (item.kind === 'text' ? [item.text] : []));
}

describe('sheets to find by', () => {
  it('puts a crossing on one page, with its tapes, its offsets and how sure it is', () => {
    const pages = stakeOutPages(stakeOutAt(project, survey, 'G1', figures('metric')), survey, input);
    expect(pages).toHaveLength(1);
    const words = wordsOf(pages[0]!.items).join(' ');
    expect(words).toContain('To find the crossing at G1');
    // Two metres along and 1.3 m off: sqrt(2² + 1.3²) = 2.385 m from both posts.
    expect(words).toContain('2.39 m');
    expect(words).toContain('1.30 m north');
    expect(words).toContain('0.30 m');
    expect(words).toMatch(/Partly measured: it lies within about 0\.70 m/);
  });

  it('draws it in true proportions, north up', () => {
    const { stake } = stakeOutAt(project, survey, 'G1', figures('metric'));
    const look = { survey, f: figures('metric'), measure, sizePt: 9 } as const;
    const { items, scaleDenominator } = stakeSketch(stake, 'b', [0, 0, 120, 90], look);
    const lengths = [...leafItems(items)].flatMap((item) =>
      item.kind === 'path' && item.stroke?.width === 0.25 ? item.paths.map(lengthMm) : [],
    );
    expect(lengths).toHaveLength(2);
    for (const [i, { distanceM }] of stake.points.find(({ key }) => key === 'b')!.tapes.entries()) {
      expect(lengths[i]).toBeCloseTo((distanceM * 1000) / scaleDenominator, 6);
    }
    const circles = [...leafItems(items)].flatMap((item) =>
      item.kind === 'circles' && item.fill === '#000000' ? item.centres : [],
    );
    expect(circles.length).toBeGreaterThan(0);
  });

  it('keeps every letter of a sketch inside its frame', () => {
    const { stake } = stakeOutAt(project, survey, 'G1', figures('metric'));
    for (const [widthMm, heightMm] of [
      [92, 80],
      [60, 60],
      [186, 120],
    ] as const) {
      const look = { survey, f: figures('imperial'), measure, sizePt: 11.25 } as const;
      const { items } = stakeSketch(stake, null, [0, 0, widthMm, heightMm], look);
      for (const item of leafItems(items)) {
        if (item.kind !== 'text') continue;
        const half = measure(item.text, item.font, item.size / mmPerPt) * (item.align === 'centre' ? 0.5 : 1);
        const left = item.align === 'left' ? item.at[0] : item.at[0] - half;
        const right = item.align === 'right' ? item.at[0] : item.at[0] + half;
        expect(left).toBeGreaterThanOrEqual(-0.5);
        expect(right).toBeLessThanOrEqual(widthMm + 0.5);
      }
    }
  });

  it('says on a dig sheet what may be hit, and that no more is known than the file', () => {
    const dig = { shape: 'point', path: [at([50, 2])], errorM: 1, withinM: 10 } as const;
    const pages = digPages(project, survey, dig, input);
    const words = pages.flatMap(({ items }) => wordsOf(items)).join(' ');
    expect(words).toContain('Do not dig yet: crossing under G1 may lie in the dig.');
    expect(words).toContain('MAY LIE IN THE DIG');
    expect(words).toContain('Only what is in this file is known.');
  });

  it('says on both what else lies in the trench', () => {
    const record = { ...newCrossingRecord('X-G1'), alsoInTrench: 'mains cable to the pump' };
    const shared = put(project, record);
    const dig = { shape: 'point', path: [at([50, 2])], errorM: 1, withinM: 10 } as const;
    const said = (pages: readonly { items: Parameters<typeof wordsOf>[0] }[]) =>
      pages.flatMap(({ items }) => wordsOf(items)).join(' ');
    expect(said(digPages(shared, survey, dig, input))).toContain('Also in the trench: mains cable to the pump.');
    expect(said(digPages(project, survey, dig, input))).not.toContain('Also in');
    const sheet = stakeOutPages(stakeOutAt(shared, survey, 'G1', figures('metric')), survey, input);
    expect(sheet).toHaveLength(1);
    expect(said(sheet)).toContain('Also in the trench: mains cable to the pump.');
  });

  it('draws both courses on a map at a scale that shows them, with the depth and what is left open', () => {
    const { startPost, endPost } = survey.gateways.get('G1')!;
    const ties = (['start', 'end'] as const).map((post) => ({
      from: { on: 'gatePost', gatewayId: 'G1', post } as const,
      postName: '',
      postAt: at(post === 'start' ? startPost : endPost),
      distanceM: 2.5,
      seM: 0.02,
    }));
    const open = put(project, { ...newBuriedPoint('b', 'X-G1', 'bend'), ties });
    const window = mapWindow([0, 0, 120, 120], [50, 0], 100, survey.plane);
    const { items, labels } = openingLayer(open, survey, window, figures('metric'), measure);
    const dashed = [...leafItems(items)].filter(
      (item) => item.kind !== 'text' && 'stroke' in item && item.stroke?.dash,
    );
    expect(dashed).toHaveLength(2);
    const said = JSON.stringify(labels.map(({ places }) => places[0]));
    for (const words of ['trench 0.30 m planned', 'not measured', 'side not said']) expect(said).toContain(words);
  });

  it('refuses what can’t be printed, in words', () => {
    expect(() => stakeOutAt(project, survey, 'G9', figures('metric'))).toThrow(SheetProblem);
    const nowhere = { shape: 'line', path: [], errorM: 1, withinM: 10 } as const;
    expect(() => digPages(project, survey, nowhere, input)).toThrow(SheetProblem);
  });

  it('turns into SVG with its letters and no colour of its own', () => {
    const { stake } = stakeOutAt(project, survey, 'G1', figures('metric'));
    const look = { survey, f: figures('metric'), measure, sizePt: 9 } as const;
    const text = JSON.stringify(svgElements(stakeSketch(stake, null, [0, 0, 90, 80], look).items));
    expect(text).toContain('2.39 m');
    expect(text).not.toMatch(/#[0-9a-f]{6}/i);
  });
});

function lengthMm([a, b]: readonly PaperPoint[]): number {
  return Math.hypot(b![0] - a![0], b![1] - a![1]);
}
