import type { Problem } from '../../core/api/result.ts';
import { plainWords } from '../../core/words/figures.ts';
import { type LastLine, useApp } from './appState.ts';

function notSaved(): LastLine {
  return { kind: 'refused', text: plainWords().window.frame.done.notSavedAnyMore };
}

/** Shows a problem until the user has read it; that nothing is saved any more stands on the last line until it is again. */
export function report(problem: Problem): void {
  useApp.setState({ problem, ...(problem.code === 'overwritten' ? { lastLine: notSaved() } : {}) });
}

/** Shows a fault of this program itself. What is shown already stays: the first fault is the one that tells most. */
export function reportFault(error: unknown): void {
  if (useApp.getState().problem) return;
  const { fault } = plainWords().window.frame;
  report({ code: 'failed', message: fault.inWindow({ why: faultText(error) }), remedy: fault.inWindowRemedy });
}

const longestText = 200;

/** What an error says of itself, short and without a full stop. */
export function faultText(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return (text.trim() || plainWords().window.frame.fault.noReason).slice(0, longestText).replace(/\.$/, '');
}

/** Chromium reports so that a change of sizes was put off by one frame, which is nothing to tell of. */
const harmless = /^ResizeObserver loop/;

/** From now on, what nobody caught is shown rather than lost. */
export function reportWhatNobodyCaught(): void {
  window.addEventListener('error', ({ error, message }) => {
    if (!harmless.test(message)) reportFault(error ?? message);
  });
  window.addEventListener('unhandledrejection', ({ reason }) => reportFault(reason));
}
