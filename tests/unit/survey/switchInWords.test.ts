import { describe, expect, it } from 'vitest';
import { phonePage } from '../../../core/exchange/phone/phonePage.ts';
import { allTables } from '../../../core/exchange/tables/allTables.ts';
import { switchTable } from '../../../core/sheets/switchRegisterPages.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { cutsOffSentence, feedSentence } from '../../../core/survey/switchInWords.ts';
import { figures } from '../../../core/words/figures.ts';
import { drawing, endSwitch, energiser, leadOut, line, lineSwitch } from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';
import { plainMeasure } from '../sheets/plainMeasure.ts';

/** A lane with a loop on it: S and T at the loop's ends, M in its middle, off; a branch hangs on the lane by U, off. */
const project = drawing(
  energiser('E', [0, -20]),
  leadOut('L', 'E', [
    [0, -20],
    [0, 0],
  ]),
  line('lane', [
    [0, 0],
    [1000, 0],
  ]),
  line('loop', [
    [100, 0],
    [100, 200],
    [300, 200],
    [300, 0],
  ]),
  line('branch', [
    [700, 0],
    [700, 250],
  ]),
  endSwitch('S', 'loop', 'start'),
  lineSwitch('M', 'loop', 300, { normally: 'open' }),
  lineSwitch('N', 'loop', 200),
  endSwitch('U', 'branch', 'start', { normally: 'open' }),
);
const survey = surveyOf(project);
const rowOf = (id: string) => survey.switches.find((row) => row.switch.id === id)!;

describe('how a switch is fed, in words', () => {
  it('is said of one side, of both, and of one that stands off', () => {
    const said = ['S', 'M', 'N', 'U'].map((id) => [
      inEnglish(feedSentence(rowOf(id).feed)),
      inEnglish(cutsOffSentence(rowOf(id), project)),
    ]);
    expect(said).toEqual([
      ['Fed from section A; beyond it: section B.', 'Turned off alone it cuts off 300 m of fence, sections B, C.'],
      ['Fed from both sides: section C and section A. It is off, and there is current on both sides of it.', ''],
      ['Fed from section B; beyond it: section C.', 'Turned off alone it cuts off 100 m of fence, section C.'],
      ['Fed from section A; beyond it: section D.', 'Off, it keeps dead 250 m of fence, section D.'],
    ]);
  });

  it('stands in the printed register, the tables and the page for the phone', () => {
    const table = switchTable(survey, figures('metric'), false);
    const fed = table.columns.findIndex(({ title }) => title === 'Fed');
    expect(table.rows.map((cells) => cells[fed])).toEqual([
      'both sides: C | A',
      'from B to C',
      'from A to B',
      'from A to D',
    ]);
    const switches = allTables(project, survey).find(({ name }) => name === 'switches')!;
    const column = switches.columns.findIndex(({ name }) => name === 'fed');
    expect(switches.rows.map(({ cells }) => cells[column])).toEqual([
      'from one side',
      'from both sides',
      'from one side',
      'from one side',
    ]);
    const page = phonePage({ project, survey, date: '2026-05-01', measure: plainMeasure, photos: [] });
    expect(page).toContain('Fed from both sides: section C and section A.');
    expect(page).toContain('Normally off (open).');
    expect(page).not.toContain('From section');
  });
});
