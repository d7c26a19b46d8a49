import type { AnalysisPart } from '../work/analysisMessages.ts';
import { useApp } from './appState.ts';

/**
 * Whether what was worked out beside the window is of the drawing as it is now, is being worked out (what there is,
 * is of an older state), or could not be.
 */
export type Standing = 'current' | 'working' | 'failed';

export function useStanding(part: AnalysisPart): Standing {
  return useApp(({ analysis }) => {
    if (!analysis) return 'working';
    if (analysis.failed[part] !== undefined) return 'failed';
    return analysis.of[part] === analysis.revision ? 'current' : 'working';
  });
}
