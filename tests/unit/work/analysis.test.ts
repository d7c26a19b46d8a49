import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { allThings } from '../../../core/model/project.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { useApp } from '../../../renderer/state/appState.ts';
import { analysis } from '../../../renderer/work/analysis.ts';
import type { FromAnalysis, ToAnalysis } from '../../../renderer/work/analysisMessages.ts';
import { drawing, line } from '../../support/drawings.ts';
import { FakeWorker } from '../../support/fakeWorker.ts';

const project = drawing(
  line('lane', [
    [0, 0],
    [900, 0],
  ]),
);
const now = () => useApp.getState().analysis!;
const last = () => FakeWorker.made.at(-1) as FakeWorker<ToAnalysis, FromAnalysis>;
const findings = (revision: number): FromAnalysis => ({ type: 'findings', revision, findings: [] });

function show(revision: number): void {
  useApp.setState({
    file: {
      path: '/invented/Test.undergate',
      fileName: 'Test.undergate',
      project,
      survey: surveyOf(project),
      state: { revision, undo: null, redo: null } as never,
    },
  });
}

beforeEach(() => {
  FakeWorker.made = [];
  vi.stubGlobal('Worker', FakeWorker);
  show(1);
  analysis.reset([...allThings(project)], 1);
});

afterEach(() => {
  analysis.reset([], 0);
  useApp.setState({ file: null, problem: null, page: 'cover' });
  vi.unstubAllGlobals();
});

describe('the window and its worker', () => {
  it('keeps one worker, whatever is edited while it works', () => {
    for (let revision = 2; revision < 20; revision++) analysis.changed([], revision);
    expect(FakeWorker.made).toHaveLength(1);
    expect(last().isEnded).toBe(false);
    expect(last().heard.filter(({ type }) => type === 'changed')).toHaveLength(18);
  });

  it('takes no answer of an older state, and knows of which state each part is', () => {
    last().answers(findings(1));
    last().answers({ type: 'plan', revision: 1, plan: null });
    expect(now().of).toEqual({ findings: 1, plan: 1 });
    analysis.changed([], 2);
    last().answers({ type: 'power', revision: 1, tables: { improvements: null, switches: [] } });
    expect(now().powerTables).toBeNull();
    last().answers(findings(2));
    expect(now()).toMatchObject({ revision: 2, of: { findings: 2, plan: 1 } });
  });

  it('tells it which page is open, so that what is on the screen is worked out first', () => {
    useApp.setState({ page: 'divide' });
    useApp.setState({ page: 'power' });
    useApp.setState({ page: 'draw' });
    expect(last().heard.filter(({ type }) => type === 'shown')).toEqual([
      { type: 'shown', shown: null },
      { type: 'shown', shown: 'plan' },
      { type: 'shown', shown: 'power' },
      { type: 'shown', shown: null },
    ]);
  });

  it('takes the fit for stale as soon as it is asked for another round', () => {
    last().answers({ type: 'fit', revision: 1, fit: { round: null, used: 0, fits: [], messages: [] } });
    expect(now().of.fit).toBe(1);
    analysis.fitRound('2031-05-02');
    expect(now().of.fit).not.toBe(now().revision);
    expect(now().fit).not.toBeNull();
    expect(last().heard.at(-1)).toEqual({ type: 'fitRound', lastDay: '2031-05-02' });
  });

  it('stops the plan and goes on with it; an edit begins a new one', () => {
    analysis.stopPlan();
    expect(now().planStopped).toBe(true);
    analysis.goOnPlan();
    expect(now()).toMatchObject({ planStopped: false, planning: 0 });
    analysis.stopPlan();
    analysis.changed([], 2);
    expect(now()).toMatchObject({ planStopped: false, planning: null });
    expect(last().heard[0]).toEqual({ locale: 'en-GB', language: 'en' });
    expect(
      last()
        .heard.slice(1)
        .map(({ type }) => type),
    ).toEqual(['shown', 'reset', 'stopPlan', 'goOnPlan', 'stopPlan', 'changed']);
  });
});

describe('a worker that fails', () => {
  const ways: [string, () => void][] = [
    ['its script breaks', () => last().breaks('out of memory')],
    ['an answer can not be read', () => last().dispatchEvent(new Event('messageerror'))],
    [
      'an edit does not fit its copy',
      () => last().answers({ type: 'failed', part: null, revision: 1, message: 'no fit' }),
    ],
    ['a part goes wrong', () => last().answers({ type: 'failed', part: 'plan', revision: 1, message: 'no plan' })],
  ];

  it.each(ways)('is replaced once by one that is given the whole project: %s', (_, fail) => {
    fail();
    expect(FakeWorker.made.map(({ isEnded }) => isEnded)).toEqual([true, false]);
    expect(last().heard.at(-1)).toEqual({ type: 'reset', things: [...allThings(project)], revision: 1 });
    expect(now().failed).toEqual({});
    expect(useApp.getState().problem).toBeNull();
  });

  it.each(ways)('for the second time is said to have failed, and why, and how to go on: %s', (_, fail) => {
    fail();
    fail();
    expect(FakeWorker.made).toHaveLength(2);
    expect(now().failed.plan).toBeTruthy();
    expect(now().planning).toBeNull();
    expect(useApp.getState().problem).toMatchObject({ code: 'failed', message: /could not be worked out/ });
    expect(useApp.getState().problem!.remedy).toContain('The drawing is safe in the file.');
  });

  it('says of the parts that are there already nothing', () => {
    last().breaks('broken');
    last().answers(findings(1));
    last().breaks('broken');
    expect(Object.keys(now().failed).sort()).toEqual(['fit', 'plan', 'power']);
    expect(now().of.findings).toBe(1);
  });

  it('is tried again by the next edit, and by the user; the message is not repeated', () => {
    last().breaks('broken');
    last().breaks('broken');
    useApp.setState({ problem: null });
    analysis.changed([], 2);
    expect(FakeWorker.made).toHaveLength(3);
    expect(now().failed).toEqual({});
    last().breaks('broken');
    expect(FakeWorker.made).toHaveLength(3);
    expect(Object.keys(now().failed)).toHaveLength(4);
    expect(useApp.getState().problem).toBeNull();
    analysis.tryAgain();
    expect(FakeWorker.made).toHaveLength(4);
    last().answers(findings(2));
    expect(now()).toMatchObject({ failed: {}, of: { findings: 2 } });
  });

  it('that works again is replaced again at the next failure', () => {
    last().breaks('broken');
    last().answers({ type: 'settled', revision: 1 });
    last().breaks('broken');
    expect(FakeWorker.made).toHaveLength(3);
    expect(now().failed).toEqual({});
  });

  it('is not heard any more once it is replaced', () => {
    const first = last();
    first.breaks('broken');
    first.answers(findings(1));
    first.breaks('broken again');
    expect(now().of).toEqual({});
    expect(FakeWorker.made).toHaveLength(2);
  });
});
