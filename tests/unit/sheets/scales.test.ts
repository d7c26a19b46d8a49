import { describe, expect, it } from 'vitest';
import { newProperty } from '../../../core/model/defaults.ts';
import { projectOf } from '../../../core/model/project.ts';
import { propertyExtent } from '../../../core/sheets/extent.ts';
import { planSheets } from '../../../core/sheets/layoutSheets.ts';
import { fittingScale, roundScales, scaleText, suggestedScales } from '../../../core/sheets/scales.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { figures } from '../../../core/words/figures.ts';
import { baseOptions, inventedThings } from './inventedProperty.ts';

const project = projectOf(inventedThings());
const survey = surveyOf(project);

describe('suggestedScales', () => {
  it.each([
    ['A4', 'landscape'],
    ['A4', 'portrait'],
    ['A3', 'landscape'],
    ['A3', 'portrait'],
  ] as const)('ends, on %s %s, with the largest round scale that takes one sheet', (paper, orientation) => {
    const choices = suggestedScales(survey, project, { paper, orientation });
    expect(choices.map(({ sheets }) => sheets).filter((sheets) => sheets === 1)).toHaveLength(1);
    const fit = choices.at(-1)!;
    expect(fit.sheets).toBe(1);
    expect(roundScales).toContain(fit.scaleDenominator);
    expect(fittingScale(propertyExtent(survey, project)!, { paper, orientation })).toBe(fit.scaleDenominator);
    const options = { ...baseOptions, paper, orientation, scaleDenominator: fit.scaleDenominator };
    expect(planSheets(project, survey, options, figures('metric'))).toHaveLength(1);
    const larger = roundScales[roundScales.indexOf(fit.scaleDenominator) - 1]!;
    expect(
      planSheets(project, survey, { ...options, scaleDenominator: larger }, figures('metric')).length,
    ).toBeGreaterThan(1);
  });

  it('has an answer for a blank property', () => {
    const blank = projectOf([newProperty('Blank')]);
    expect(suggestedScales(surveyOf(blank), blank, baseOptions)).toEqual([{ scaleDenominator: 1000, sheets: 1 }]);
  });
});

describe('planSheets', () => {
  it('refuses a scale that takes too many sheets, and names the one that fits', () => {
    const attempt = () => planSheets(project, survey, { ...baseOptions, scaleDenominator: 100 }, figures('metric'));
    expect(attempt).toThrow(/At 1:100 the property would take [\d,]+ map sheets of A4 landscape; 60 is the most/);
    const fit = suggestedScales(survey, project, baseOptions).at(-1)!.scaleDenominator;
    try {
      attempt();
    } catch (problem) {
      expect((problem as { remedy: string }).remedy).toContain(scaleText(fit));
    }
  });

  it.each([0, -5000, Number.NaN, Number.POSITIVE_INFINITY])('refuses 1:%d', (scaleDenominator) => {
    expect(() => planSheets(project, survey, { ...baseOptions, scaleDenominator }, figures('metric'))).toThrow(
      /cannot be printed/,
    );
  });

  it('prints one sheet about a chosen centre whatever the scale', () => {
    const [sheet, ...others] = planSheets(
      project,
      survey,
      { ...baseOptions, scaleDenominator: 100, centre: [-120.25, -45.5] },
      figures('metric'),
    );
    expect(others).toEqual([]);
    expect(sheet!.centre[0]).toBeCloseTo(0, 6);
  });
});
