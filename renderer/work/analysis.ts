import { allFindings } from '../../core/checks/allFindings.ts';
import type { Finding } from '../../core/checks/finding.ts';
import type { Change } from '../../core/model/difference.ts';
import { allThings } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { plainWords } from '../../core/words/figures.ts';
import { type AnalysisResult, type Page, useApp } from '../state/appState.ts';
import { report } from '../state/report.ts';
import type { AnalysisPart, FromAnalysis, SentFinding, Shown, ToAnalysis } from './analysisMessages.ts';
import { hearLoss } from './callWorker.ts';
import { sayLocale } from './workerLocale.ts';

let worker: Worker | null = null;
/** How often the worker failed since all was last worked out: at the first time it is replaced. */
let failures = 0;

/** The window's end of the worker that works out findings, tables and the plan. */
export const analysis = {
  /** Another file, or none (no things). */
  reset(things: readonly Thing[], revision: number): void {
    failures = 0;
    if (things.length === 0) {
      drop();
      useApp.setState({ analysis: null });
      return;
    }
    useApp.setState({ analysis: { ...nothingYet, revision } });
    post({ type: 'reset', things, revision });
  },
  /** An edit is in the file. */
  changed(changes: readonly Change[], revision: number): void {
    keep({ revision, failed: {}, planning: null, planStopped: false });
    post({ type: 'changed', changes, revision });
  },
  /** The leakage is to be fitted to another round of readings, named by its last day (null: to all). */
  fitRound(lastDay: string | null): void {
    const { of } = result();
    keep({ of: of.fit === undefined ? of : { ...of, fit: noState } });
    post({ type: 'fitRound', lastDay });
  },
  /** Looks for no better plan than the one that there is. */
  stopPlan(): void {
    keep({ planStopped: true });
    post({ type: 'stopPlan' });
  },
  /** Looks on from where it was stopped. */
  goOnPlan(): void {
    keep({ planStopped: false, planning: 0 });
    post({ type: 'goOnPlan' });
  },
  /** Begins anew what could not be worked out. */
  tryAgain(): void {
    failures = 0;
    keep({ failed: {} });
    startAnew();
  },
};

useApp.subscribe(({ page }, before) => {
  if (page !== before.page && worker) worker.postMessage(shownOn(page));
});

/** Of no state of the drawing that there is. */
const noState = -1;

const nothingYet: AnalysisResult = {
  revision: 0,
  findings: [],
  plan: null,
  powerTables: null,
  fit: null,
  of: {},
  failed: {},
  planning: null,
  planStopped: false,
};

function result(): AnalysisResult {
  return useApp.getState().analysis ?? nothingYet;
}

function keep(part: Partial<AnalysisResult>): void {
  useApp.setState({ analysis: { ...result(), ...part } });
}

/** What the page that is open can't show until it is worked out. */
function shownOn(page: Page): ToAnalysis {
  const of: Partial<Record<Page, Shown>> = { divide: 'plan', power: 'power' };
  return { type: 'shown', shown: of[page] ?? null };
}

function post(message: ToAnalysis): void {
  if (worker) worker.postMessage(message);
  else if (message.type === 'reset') start(message);
  else startAnew();
}

/** A fresh worker, which knows nothing of the edits before, with the whole project as it is now. */
function startAnew(): void {
  const { file } = useApp.getState();
  drop();
  if (file) start({ type: 'reset', things: [...allThings(file.project)], revision: result().revision });
}

function start(reset: ToAnalysis): void {
  const started = new Worker(new URL('./analysis.worker.ts', import.meta.url), { type: 'module' });
  sayLocale(started);
  worker = started;
  const isIn = () => worker === started;
  started.addEventListener('message', ({ data }: MessageEvent<FromAnalysis>) => {
    if (isIn()) hear(data);
  });
  hearLoss(started, (why) => {
    if (isIn()) fail(null, why);
  });
  started.postMessage(shownOn(useApp.getState().page));
  started.postMessage(reset);
}

function drop(): void {
  worker?.terminate();
  worker = null;
}

function hear(message: FromAnalysis): void {
  const { revision } = message;
  if (message.type === 'failed' && message.part === null) {
    fail(null, message.message);
    return;
  }
  if (revision !== result().revision) return;
  switch (message.type) {
    case 'findings':
      keep({ findings: message.findings.map(withFixes), of: { ...result().of, findings: revision } });
      break;
    case 'power':
      keep({ powerTables: message.tables, of: { ...result().of, power: revision } });
      break;
    case 'fit':
      keep({ fit: message.fit, of: { ...result().of, fit: revision } });
      break;
    case 'plan':
      keep({ plan: message.plan, of: { ...result().of, plan: revision } });
      break;
    case 'planning':
      keep({ planning: message.fraction });
      break;
    case 'failed':
      fail(message.part, message.message);
      break;
    case 'settled':
      if (Object.keys(result().failed).length === 0) failures = 0;
      break;
  }
}

const parts: readonly AnalysisPart[] = ['findings', 'power', 'fit', 'plan'];

/**
 * The worker is replaced once, in case its copy of the project went wrong. If the new one fails too it is said what
 * could not be worked out; the next edit is another try.
 */
function fail(part: AnalysisPart | null, why: string): void {
  failures++;
  if (failures === 1) {
    startAnew();
    return;
  }
  const { of, revision, failed } = result();
  const open = part ? [part] : parts.filter((each) => of[each] !== revision);
  keep({ failed: { ...failed, ...Object.fromEntries(open.map((each) => [each, why])) }, planning: null });
  if (part === null) drop();
  if (failures > 2) return;
  const words = plainWords().window.exchange.work;
  report({ code: 'failed', message: words.notWorkedOut({ part: part ?? 'all', why }), remedy: words.goOnWorking });
}

/** Gives a finding its fixes back: each looks the finding up again in the project it is asked to fix. */
function withFixes(sent: SentFinding): Finding {
  return {
    ...sent,
    fixes: sent.fixes.map(({ label }) => ({
      label,
      edit: (project, newId) => {
        const found = allFindings(project, surveyOf(project)).find(({ id }) => id === sent.id);
        return found?.fixes.find((fix) => fix.label.code === label.code)?.edit(project, newId) ?? project;
      },
    })),
  };
}
