import { describe, expect, it } from 'vitest';
import {
  energisersToSearch,
  faultSearchGround,
  livePieces,
} from '../../../core/locate/faultSearch/faultSearchGround.ts';
import { suspectsIn } from '../../../core/locate/faultSearch/faultSearchSuspects.ts';
import { pieceInWords, stepInWords } from '../../../core/locate/faultSearch/faultSearchWords.ts';
import { planWhole } from '../../../core/locate/faultSearch/testPlan.ts';
import { put } from '../../../core/model/project.ts';
import { newCrossingRecord } from '../../../core/model/recordDefaults.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { bridgedGateway, cutOut, drawing, energiser, leadOut, line, lineSwitch } from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';

/** A square of fence with a lead-out switch, three switches around it and a spur behind one that stands open. */
const project = drawing(
  line('F1', [
    [0, 0],
    [200, 0],
    [200, 200],
    [0, 200],
    [0, 0],
  ]),
  line(
    'F2',
    [
      [200, 100],
      [400, 100],
    ],
    { note: 'Old wire.' },
  ),
  bridgedGateway('G1', 'F1', 50),
  bridgedGateway('G2', 'F1', 60 + 200, { note: 'Wet in winter.' }),
  energiser('E1', [-20, -20]),
  leadOut('L1', 'E1', [
    [-20, -20],
    [0, 0],
  ]),
  energiser('E2', [900, 900]),
  cutOut('S0', { on: 'leadOut', leadOutId: 'L1' }),
  lineSwitch('S1', 'F1', 100),
  lineSwitch('S2', 'F1', 450),
  lineSwitch('S3', 'F1', 700),
  lineSwitch('S4', 'F2', 100, { normally: 'open' }),
);
const survey = surveyOf(project);

describe('faultSearchGround', () => {
  it('is what one energiser feeds, the lead-out before its switch as a piece of its own', () => {
    const ground = faultSearchGround(survey, 'E1')!;
    expect(energisersToSearch(survey)).toEqual(['E1']);
    expect(faultSearchGround(survey, 'E2')).toBeNull();
    expect(ground.pieces[ground.source]).toMatchObject({ section: null });
    expect(inEnglish(pieceInWords(ground, ground.source, survey))).toBe('the energiser, its earth or its lead-out');
    // Lead-out, three arcs of the ring; the spur beyond the open switch is dead and has no part in it.
    expect(ground.pieces).toHaveLength(4);
    expect(ground.switches.map(({ id }) => id).sort()).toEqual(['S0', 'S1', 'S2', 'S3']);
    expect(livePieces(ground, new Set())).toEqual(new Set([0, 1, 2, 3]));
    expect(livePieces(ground, new Set(['S0']))).toEqual(new Set([0]));
  });

  it('opens the ring before the first test', () => {
    const ground = faultSearchGround(survey, 'E1')!;
    const { openFirst } = planWhole(ground, [], 'tests');
    expect(openFirst).toHaveLength(1);
    expect(['S1', 'S2', 'S3']).toContain(openFirst[0]);
    expect(livePieces(ground, new Set(openFirst)).size).toBe(4);
  });

  it('says what to do in the words of the trade', () => {
    const step = { check: 'test', switchId: 'S1', openIds: ['S2', 'S1'], toOpen: ['S1'], toClose: ['S0'] } as const;
    expect(inEnglish(stepInWords(step, project, survey))).toBe(
      'Open S1, close S0. Then read at S1, on the energiser’s side: F1, 100 m from its start.',
    );
  });
});

describe('suspectsIn', () => {
  const record = { ...newCrossingRecord('X-G1'), jointsUnderground: 1 };
  const recorded = put(project, record);
  const suspects = (gateway: string) => {
    const section = survey.sections.find(({ gatewayIds }) => gatewayIds.includes(gateway))!;
    return suspectsIn(recorded, survey, section).map(({ name, why }) => ({
      name: inEnglish(name),
      why: inEnglish(why),
    }));
  };

  it('puts a joint underground first, then what was noted, then clamps, and the walk along the wire last', () => {
    expect(suspects('G1')[0]).toMatchObject({
      name: 'Crossing at G1',
      why: expect.stringContaining('a joint underground'),
    });
    expect(suspects('G2')[0]).toMatchObject({ name: 'Crossing at G2', why: expect.stringContaining('Wet in winter.') });
    expect(suspects('G2').at(-1)).toMatchObject({ name: 'F1', why: expect.stringContaining('walk it') });
  });
});
