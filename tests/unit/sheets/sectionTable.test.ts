import { describe, expect, it } from 'vitest';
import { leafItems } from '../../../core/drawing/displayList.ts';
import { type Project, propertyOf } from '../../../core/model/project.ts';
import { overLimitWords, sectionTable, sectionTablePages } from '../../../core/sheets/sectionTablePages.ts';
import { dividePlan } from '../../../core/survey/dividePlan.ts';
import { overLimitInWords } from '../../../core/survey/overLimit.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { figures } from '../../../core/words/figures.ts';
import { bridgedGateway, drawing, energiser, leadOut, line, property, rule } from '../../support/drawings.ts';
import { plainMeasure } from './plainMeasure.ts';

const lane = line('lane', [
  [0, 0],
  [2000, 0],
]);
const fed = [
  energiser('E', [0, -20]),
  leadOut('L', 'E', [
    [0, -20],
    [0, 0],
  ]),
];
const gates = [500, 1000, 1500].flatMap((atM, i) => bridgedGateway(`G${i + 1}`, 'lane', atM));
const limits = (maxSectionM: number, maxGateways: number | null = null) =>
  property({ divide: { ...property().divide, maxSectionM, maxGateways } });

function printed(project: Project): string {
  const survey = surveyOf(project);
  const input = { property: propertyOf(project), date: '2031-05-02', measure: plainMeasure, f: figures('metric') };
  const pages = sectionTablePages(project, survey, input);
  const items = pages.flatMap((page) => [...leafItems(page.items)]);
  return items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])).join(' ');
}

describe('the printed table of sections', () => {
  it('says what no set of switches brings within the limits, in the words of the screen', () => {
    const project = drawing(limits(300), fed, lane, gates);
    const survey = surveyOf(project);
    const onScreen = overLimitInWords(project, dividePlan(project, survey)!.overLimit, figures('metric')).map(
      ({ text }) => text,
    );
    expect(onScreen).toHaveLength(2);
    expect(overLimitWords(project, survey, figures('metric'))).toEqual([
      'No set of switches keeps all sections within the limit of 300 m of fence:',
      ...onScreen,
    ]);
    for (const text of onScreen) expect(printed(project)).toContain(text);
  });

  it('says nothing of the kind where all can be kept within the limits', () => {
    const project = drawing(limits(1200), fed, lane, gates);
    expect(overLimitWords(project, surveyOf(project), figures('metric'))).toEqual([]);
    expect(printed(project)).not.toContain('No set of switches');
  });

  it('remarks on too many gateways as on too much fence', () => {
    const barred = ['gateway:G1', 'gateway:G2', 'gateway:G3'].map((key) => rule(key, 'forbidden'));
    const project = drawing(limits(1200, 1), fed, lane, gates, barred);
    const survey = surveyOf(project);
    expect(sectionTable(project, survey, figures('metric')).rows[0]!.at(-1)).toBe(
      'The energiser feeds in here. Longer than the limit by 788\u00a0m. 2 gateways over the limit.',
    );
    expect(overLimitWords(project, survey, figures('metric'))).toEqual([
      'No set of switches keeps all sections within the limit of 1.20 km of fence and 1 gateway:',
      'lane: a stretch of 1.99 km, 788 m over the limit, and with 3 gateways, the limit being 1, with a switch ruled out at G1, G2 and G3.',
    ]);
  });
});
