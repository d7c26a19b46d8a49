import { describe, expect, it } from 'vitest';
import { demoThings } from '../../../assets/demo/makeDemo.ts';
import { buildingWires, conductorLibrary } from '../../../core/electrical/conductors/conductorLibrary.ts';
import { leakageClasses } from '../../../core/electrical/conductors/leakage.ts';
import { earthTestBasis, earthTestSteps } from '../../../core/electrical/earth/earthTest.ts';
import { multipleRodBasis } from '../../../core/electrical/earth/multipleRodFactor.ts';
import { ruleOfThumbBasis } from '../../../core/electrical/earth/ruleOfThumb.ts';
import { soilClassBasis } from '../../../core/electrical/earth/soilClasses.ts';
import { type Project, projectOf, propertyOf } from '../../../core/model/project.ts';
import { dividePlan } from '../../../core/survey/dividePlan.ts';
import { overLimitInWords } from '../../../core/survey/overLimit.ts';
import { earthFigures } from '../../../core/survey/power/earthFigures.ts';
import { estimateOf } from '../../../core/survey/power/estimateOf.ts';
import { improvementsOf } from '../../../core/survey/power/improvements.ts';
import { lineVoltages } from '../../../core/survey/power/lineVoltages.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import { powerSentence } from '../../../core/survey/power/powerSentence.ts';
import {
  changeInWords,
  coverSentence,
  divideSentence,
  drawSentence,
  proofInWords,
  settledInWords,
} from '../../../core/survey/sentences.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { cutsOffSentence, feedInWords, feedSentence } from '../../../core/survey/switchInWords.ts';
import { testSheets } from '../../../core/survey/testSheets.ts';
import { figures } from '../../../core/words/figures.ts';
import type { Message } from '../../../core/words/message.ts';
import { pseudo } from '../../../core/words/pseudo.ts';
import { bridgedGateway, drawing, endSwitch, energiser, leadOut, line, lineSwitch } from '../../support/drawings.ts';
import { englishIn, expectFromCatalogue, namesIn } from '../../support/pseudo.ts';

const bare = drawing(
  energiser('E', [0, -20]),
  leadOut('L', 'E', [
    [0, -20],
    [0, 0],
  ]),
  line('lane', [
    [0, 0],
    [9000, 0],
  ]),
  line('loop', [
    [100, 0],
    [100, 200],
    [300, 200],
    [300, 0],
  ]),
  bridgedGateway('G', 'lane', 5000),
  endSwitch('S', 'loop', 'start'),
  lineSwitch('M', 'loop', 300, { normally: 'open' }),
);

/** All that the survey, the plan and the estimate say of a property. */
function allSaid(project: Project): Message[] {
  const survey = surveyOf(project);
  const plan = dividePlan(project, survey);
  const power = powerOf(project, survey);
  const estimate = estimateOf(power);
  const { stockMinimumV } = propertyOf(project).power;
  const stood = { off: ['S'], on: ['M'], allOn: false };
  const spots = [estimate.weakest].flatMap((place) => place ?? []);
  return [
    coverSentence(survey),
    drawSentence(survey),
    divideSentence(survey, plan),
    ...survey.switches.flatMap((row) => [
      row.where,
      feedInWords(row.feed),
      feedSentence(row.feed),
      ...[cutsOffSentence(row, project)].flatMap((said) => said ?? []),
    ]),
    ...(plan ? [settledInWords(plan), proofInWords(plan, true), ...plan.changes.map(changeInWords)] : []),
    ...(plan?.candidates ?? []).map(({ label }) => label),
    ...testSheets(project, survey).flatMap(({ steps, readAt }) => [...steps, ...readAt.map(({ text }) => text)]),
    powerSentence(power, estimate, lineVoltages(power, estimate), stood),
    ...(improvementsOf(power)?.improvements ?? []).map(({ name }) => name),
    ...power.supplies.flatMap((supply) => earthFigures(supply).flatMap(({ remarks }) => remarks)),
    ...(spots.length > 0 && stockMinimumV > 0 ? earthTestSteps() : []),
  ];
}

describe('what the survey, the plan and the estimate say', () => {
  it.each([
    ['an invented property', () => projectOf(demoThings())],
    ['a lane with a ring', () => bare],
  ])('comes from the catalogue: %s', (_, make) => {
    const project = make();
    const names = namesIn(project);
    const said = allSaid(project);
    expect(said.length).toBeGreaterThan(30);
    for (const each of said) expectFromCatalogue(each, names);
  });

  it('names conductors and sources from the catalogue', () => {
    const library = [...conductorLibrary, ...buildingWires];
    const bases = [
      ...library.map(({ basis }) => basis),
      ...leakageClasses.map(({ basis }) => basis),
      soilClassBasis,
      earthTestBasis,
      multipleRodBasis,
      ruleOfThumbBasis,
    ];
    for (const { name } of library) expectFromCatalogue(name, new Set());
    for (const { source } of bases) if (source) expectFromCatalogue(source, new Set());
  });

  it('tells of fence over the limits in the language of the reader', () => {
    const property = { ...propertyOf(bare), divide: { ...propertyOf(bare).divide, maxSectionM: 300 } };
    const project = { ...bare, property: new Map([['property', property]]) };
    const plan = dividePlan(project, surveyOf(project))!;
    const lines = overLimitInWords(project, plan.overLimit, figures('metric', pseudo()));
    expect(lines.length).toBeGreaterThan(0);
    for (const { text } of lines) expect(englishIn(text, namesIn(project))).toBe('');
  });
});
