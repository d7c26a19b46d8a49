import type { Problem } from '../../core/api/result.ts';
import { type LastLine, useApp } from './appState.ts';

const notSaved: LastLine = { kind: 'refused', text: 'Nothing is saved any more: save a copy under a new name.' };

/** Shows a problem until the user has read it; that nothing is saved any more stands on the last line until it is again. */
export function report(problem: Problem): void {
  useApp.setState({ problem, ...(problem.code === 'overwritten' ? { lastLine: notSaved } : {}) });
}
