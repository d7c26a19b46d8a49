import type { Problem } from '../../core/api/result.ts';
import { useApp } from './appState.ts';

/** Shows a problem until the user has read it. */
export function report(problem: Problem): void {
  useApp.setState({ problem });
}
