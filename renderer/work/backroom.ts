import { allFindings } from '../../core/checks/allFindings.ts';
import type { Finding } from '../../core/checks/finding.ts';
import type { Change } from '../../core/model/difference.ts';
import { allThings, type Project } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { surveyOf } from '../../core/registers/survey.ts';
import { type BackroomResult, useApp } from '../state/appState.ts';
import { report } from '../state/report.ts';
import type { FromBackroom, SentFinding, ToBackroom } from './messages.ts';

/** Work on an old state that has gone on this long is dropped when a new edit comes in. */
const patienceMs = 400;

let worker: Worker | null = null;
let busySince: number | null = null;
let latest = 0;

/** The window's end of the back room. */
export const backroom = {
  /** Another file, or none (no things). */
  reset(things: readonly Thing[], revision: number): void {
    drop();
    latest = revision;
    if (things.length > 0) ask({ type: 'reset', things, revision });
  },
  /** An edit is in the file. Long work on the state before it is dropped. */
  changed(changes: readonly Change[], revision: number): void {
    latest = revision;
    if (worker && busySince !== null && performance.now() - busySince > patienceMs) {
      const file = useApp.getState().file;
      drop();
      if (file) ask(wholeProject(file.project, revision));
    } else {
      ask({ type: 'changed', changes, revision });
    }
  },
  /** The leakage is to be fitted to another round of readings, named by its last day (null: to all). */
  fitRound(lastDay: string | null): void {
    ask({ type: 'fitRound', lastDay, revision: latest });
  },
  /** Stops what is being worked out; the next edit starts it again. */
  stop(): void {
    drop();
  },
};

function ask(message: ToBackroom): void {
  const file = useApp.getState().file;
  busySince ??= performance.now();
  useApp.setState({ working: { revision: message.revision, fraction: 0 } });
  if (worker) {
    worker.postMessage(message);
    return;
  }
  worker = new Worker(new URL('./backroom.worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<FromBackroom>) => hear(data));
  // A fresh worker knows nothing of the edits before: it is given the whole project first, or in place of an edit.
  if (message.type !== 'reset' && file) worker.postMessage(wholeProject(file.project, message.revision));
  if (message.type !== 'changed' || !file) worker.postMessage(message);
}

function wholeProject(project: Project, revision: number): ToBackroom {
  return { type: 'reset', things: [...allThings(project)], revision };
}

function drop(): void {
  worker?.terminate();
  worker = null;
  busySince = null;
  useApp.setState({ working: null });
}

function hear(message: FromBackroom): void {
  if (message.revision !== latest) return;
  const { revision } = message;
  switch (message.type) {
    case 'progress':
      busySince ??= performance.now();
      useApp.setState({ working: { revision, fraction: message.fraction } });
      break;
    case 'findings':
      keep({ revision, findings: message.findings.map(withMends) });
      break;
    case 'plan':
      keep({ revision, plan: message.plan });
      break;
    case 'power':
      keep({ revision, powerTables: message.tables });
      break;
    case 'fit':
      keep({ revision, fit: message.fit });
      break;
    case 'resting':
      busySince = null;
      break;
    case 'done':
      busySince = null;
      useApp.setState({ working: null });
      break;
    case 'failed':
      busySince = null;
      useApp.setState({ working: null });
      report({
        code: 'failed',
        message: `The checks and the plan could not be worked out: ${message.message}`,
        remedy: 'The drawing is safe in the file. Undo the last step and try again.',
      });
      break;
  }
}

function keep(part: Partial<BackroomResult> & { readonly revision: number }): void {
  useApp.setState(({ backroom: before }) => ({
    backroom: { findings: [], plan: null, powerTables: null, fit: null, ...before, ...part },
  }));
}

/** Gives a finding its mends back: each looks the finding up again in the project it is asked to mend. */
function withMends(sent: SentFinding): Finding {
  return {
    ...sent,
    fixes: sent.fixes.map(({ label }) => ({
      label,
      edit: (project, newId) => {
        const found = allFindings(project, surveyOf(project)).find(({ id }) => id === sent.id);
        return found?.fixes.find((fix) => fix.label === label)?.edit(project, newId) ?? project;
      },
    })),
  };
}
