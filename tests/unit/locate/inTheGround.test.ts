import { describe, expect, it } from 'vitest';
import { crossingRows } from '../../../core/locate/crossingSearch.ts';
import { findSentence } from '../../../core/locate/findSentence.ts';
import { isInTheGround } from '../../../core/locate/inTheGround.ts';
import { put } from '../../../core/model/project.ts';
import { newBuriedPoint, newCrossingRecord } from '../../../core/model/recordDefaults.ts';
import { crossingRegister, recordSentence } from '../../../core/record/crossingRegister.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { at, bridgedGateway, drawing, leadOut, line } from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';

const project = drawing(
  line('F1', [
    [0, 0],
    [200, 0],
  ]),
  bridgedGateway('G1', 'F1', 50, { status: 'built' }),
  bridgedGateway('G2', 'F1', 100),
);
const survey = surveyOf(project);
const planned = project.crossing.get('X-G2')!;

describe('what is in the ground', () => {
  it('is what is buried and built, and what anything was recorded of although it is marked planned', () => {
    expect(isInTheGround(project, project.crossing.get('X-G1')!)).toBe(true);
    expect(isInTheGround(project, planned)).toBe(false);
    const bend = { ...newBuriedPoint('b', 'X-G2', 'bend'), offset: { alongM: 2, leftM: 1 } };
    expect(isInTheGround(put(project, { ...newCrossingRecord('X-G2'), soil: 'clay' }), planned)).toBe(true);
    expect(isInTheGround(put(project, bend), planned)).toBe(true);
    expect(isInTheGround(put(project, { ...bend, crossingId: 'X-G1' }), planned)).toBe(false);
    // What was written down and taken out again.
    expect(isInTheGround(put(project, newCrossingRecord('X-G2')), planned)).toBe(false);
    expect(isInTheGround(put(project, { ...bend, offset: null }), planned)).toBe(false);
    expect(isInTheGround(project, { ...planned, status: 'built', method: 'overhead' })).toBe(false);
  });

  it('is of lead-outs what is buried and built', () => {
    const path = [[0, -9] as const, [0, 0] as const];
    const [built, drawn] = (['built', 'planned'] as const).map((status) => leadOut('L', 'E', path, { status }));
    expect(isInTheGround(project, built!)).toBe(true);
    expect(isInTheGround(project, drawn!)).toBe(false);
    expect(isInTheGround(project, { ...built!, buried: false })).toBe(false);
  });

  it('is counted apart from what is planned', () => {
    expect(inEnglish(findSentence(crossingRows(project, survey), []))).toBe(
      '1 crossing in the ground (1 not measured), 1 planned.',
    );
    const both = put(project, { ...newCrossingRecord('X-G2'), soil: 'clay' });
    expect(inEnglish(findSentence(crossingRows(both, survey), []))).toBe('2 crossings in the ground (2 not measured).');
    expect(inEnglish(recordSentence(crossingRegister(project, survey), 0))).toBe(
      "0 of 1 crossing in the ground recorded; 1 can't be found by tape yet; 1 planned.",
    );
  });

  it('lacks, first of all, the side that nobody said', () => {
    const { startPost, endPost } = survey.gateways.get('G1')!;
    const ties = (distanceM: number) =>
      (['start', 'end'] as const).map((post) => ({
        from: { on: 'gatePost', gatewayId: 'G1', post } as const,
        postName: '',
        postAt: at(post === 'start' ? startPost : endPost),
        distanceM,
        seM: 0.02,
      }));
    const lacks = (distanceM: number, side: 'left' | null) => {
      const bend = { ...newBuriedPoint('b', 'X-G1', 'bend'), ties: ties(distanceM), side };
      return inEnglish(crossingRegister(put(project, bend), survey)[0]!.lacks[0]);
    };
    expect(lacks(2.5, null)).toBe('which side (bend)');
    expect(lacks(2.5, 'left')).toBe('ties of the west riser foot');
    expect(lacks(1, null)).toBe('ties that meet (bend)');
  });
});
