import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { put } from '../../../core/model/project.ts';
import { dividePlan } from '../../../core/survey/dividePlan.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { cutOut, property } from '../../support/drawings.ts';
import { randomDrawing } from '../../support/randomDrawing.ts';

const limit = (maxSectionM: number) => property({ divide: { ...property().divide, maxSectionM } });

/** Of sections with any fence, in order. */
const lengths = (sections: readonly { readonly lengthM: number }[]) =>
  sections.flatMap(({ lengthM }) => (lengthM > 0.001 ? [lengthM] : [])).sort((a, b) => a - b);

describe('any plan', () => {
  it('gives, once taken, the sections that it promised, within the limit but for runs that are too long', () => {
    fc.assert(
      fc.property(randomDrawing, fc.constantFrom(60, 120, 250), (drawn, maxSectionM) => {
        const project = put({ ...drawn, switch: new Map() }, limit(maxSectionM));
        const plan = dividePlan(project, surveyOf(project));
        if (!plan) return;
        const taken = plan.missing.reduce((now, { key, place }) => put(now, cutOut(key, place)), project);
        const { sections } = surveyOf(taken);
        const reached = lengths(sections.filter(({ fed }) => fed));
        const promised = lengths(plan.sections);
        expect(reached).toHaveLength(promised.length);
        for (const [i, lengthM] of promised.entries()) {
          expect(reached[i]).toBeCloseTo(lengthM, 2);
          const named = plan.overLimit.some((run) => Math.abs(run.lengthM - lengthM) < 0.01);
          expect(lengthM <= maxSectionM || named).toBe(true);
        }
        expect(dividePlan(taken, surveyOf(taken))).toMatchObject({ missing: [], surplus: [] });
      }),
      { seed: 40, numRuns: 300 },
    );
  });
});
