import { describe, expect, it } from 'vitest';
import type { Thing } from '../../../core/model/things.ts';
import { dividePlan } from '../../../core/survey/dividePlan.ts';
import { changeInWords, coverSentence, divideSentence, drawSentence } from '../../../core/survey/sentences.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { testSheets } from '../../../core/survey/testSheets.ts';
import {
  bridgedGateway,
  drawing,
  endSwitch,
  energiser,
  gateSwitch,
  leadOut,
  line,
  property,
  ring,
} from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';

const survey = (...things: readonly (Thing | readonly Thing[])[]) => surveyOf(drawing(...things));
const fed = [
  energiser('E', [0, -20]),
  leadOut('L', 'E', [
    [0, -20],
    [0, 0],
  ]),
];
const lane = line('lane', [
  [0, 0],
  [2000, 0],
]);
const gates = [500, 1000, 1500].flatMap((atM, i) => bridgedGateway(`G${i + 1}`, 'lane', atM));
const tight = property({ divide: { ...property().divide, maxSectionM: 1200 } });

describe('the answers in a sentence', () => {
  it('say what is drawn, in the units of the property', () => {
    const square = survey(
      fed,
      ring('sq', [
        [0, 0],
        [400, 0],
        [400, 300],
        [0, 300],
      ]),
      bridgedGateway('G', 'sq', 200),
    );
    expect(inEnglish(coverSentence(square))).toBe('1.40 km of fence, 1 paddock of 12.00 ha, 1 gateway, 1 section.');
    expect(inEnglish(drawSentence(square), 'imperial')).toBe(
      '0.87 mi of fence, 1 gateway, 1 paddock of 29.65 ac; the energiser reaches all that is live.',
    );
  });

  it('say what the energiser does not reach', () => {
    expect(inEnglish(drawSentence(survey(lane)))).toBe('2.00 km of fence; no energiser is drawn yet.');
    expect(inEnglish(drawSentence(survey(lane, energiser('E', [9, 9]))))).toBe(
      '2.00 km of fence; the energiser reaches none of it.',
    );
    expect(
      inEnglish(
        drawSentence(
          survey(
            fed,
            lane,
            line('b', [
              [0, 9],
              [100, 9],
            ]),
          ),
        ),
      ),
    ).toBe('2.10 km of fence; the energiser does not reach 100 m in 1 part.');
    expect(
      inEnglish(
        drawSentence(
          survey(
            line(
              'x',
              [
                [0, 0],
                [90, 0],
              ],
              { live: false },
            ),
          ),
        ),
      ),
    ).toBe('90.0 m of fence; none of it is live.');
  });

  it('say how it is divided and what the plan misses', () => {
    const project = drawing(tight, fed, lane, gates);
    const made = surveyOf(project);
    const plan = dividePlan(project, made)!;
    expect(inEnglish(divideSentence(made, null))).toBe('1 section, longest 1.99 km, 1 over the limit.');
    expect(inEnglish(divideSentence(made, plan))).toBe(
      '1 section, longest 1.99 km, 1 over the limit; 1 switch missing.',
    );
    expect(inEnglish(changeInWords(plan.changes[0]!))).toBe(
      'Without a switch at G2: a section of 1.99 km, over by 788 m.',
    );
  });

  it('are plain where there is nothing yet', () => {
    expect(inEnglish(coverSentence(survey()))).toBe('Nothing is drawn yet.');
    expect(inEnglish(divideSentence(survey(), null))).toBe('No live fence is drawn, so there is nothing to divide.');
    expect(inEnglish(divideSentence(survey(lane), null))).toBe(
      '1 section, longest 2.00 km; no energiser feeds them yet.',
    );
  });
});

describe('a test sheet', () => {
  const project = drawing(fed, lane, gates, gateSwitch('S1', 'G1', 'start'), gateSwitch('S2', 'G2', 'start'));
  const [first, second, third] = testSheets(project, surveyOf(project));

  it('opens what leads on, and keeps the way closed', () => {
    expect(first).toMatchObject({ section: 'A', open: ['S1'], closed: [], live: ['A'] });
    expect(second).toMatchObject({
      section: 'B',
      open: ['S2'],
      closed: ['S1'],
      live: ['A', 'B'],
      cutOff: ['S1', 'S2'],
    });
    expect(third).toMatchObject({ section: 'C', open: [], closed: ['S1', 'S2'], live: ['A', 'B', 'C'] });
  });

  it('reads just beyond the switch and at the far ends', () => {
    expect(second!.readAt.map(({ text }) => inEnglish(text))).toEqual(['just beyond S1', 'on this side of S2']);
    expect(third!.readAt.map(({ text }) => inEnglish(text))).toEqual(['just beyond S2', 'at the end of lane']);
  });

  it('begins and ends with the energiser off and the fence proved dead', () => {
    for (const { steps } of testSheets(project, surveyOf(project))) {
      expect(inEnglish(steps[0])).toMatch(/energiser off.*[Pp]rove the fence dead/);
      expect(inEnglish(steps.at(-1))).toMatch(/energiser off.*proved dead/);
    }
  });

  it('says what nothing reaches', () => {
    const loose = drawing(
      fed,
      lane,
      line('b', [
        [0, 9],
        [100, 9],
      ]),
      endSwitch('S', 'b', 'start'),
    );
    const sheet = testSheets(loose, surveyOf(loose)).at(-1)!;
    expect(sheet).toMatchObject({ open: [], closed: [], readAt: [] });
    expect(sheet.steps.map((step) => inEnglish(step))).toEqual([
      'Nothing feeds section B, even with every switch on. Join it to the fence first.',
    ]);
  });
});
