import type { ReactNode } from 'react';
import { capital } from '../../../core/words/text.ts';
import { useApp } from '../../state/appState.ts';
import { useWords } from '../../state/useFigures.ts';
import { useStanding } from '../../state/useStanding.ts';
import { analysis } from '../../work/analysis.ts';
import type { AnalysisPart } from '../../work/analysisMessages.ts';

import '../../styles/standing.css';

interface WorkedOutProps {
  readonly part: AnalysisPart;
  /** What is worked out, to stand after "Working out" and, with a capital, before "could not be": "the plan". */
  readonly what: string;
  readonly children: ReactNode;
}

/** Holds what is worked out beside the window: says what state of the drawing it is of, or why there is none. */
export function WorkedOut({ part, what, children }: WorkedOutProps) {
  const { workedOut: words } = useWords().window.frame;
  const standing = useStanding(part);
  const isThere = useApp((state) => state.analysis?.of[part] !== undefined);
  if (standing === 'failed') return <NotWorkedOut part={part} what={what} />;
  if (!isThere) return <p className="register-empty">{words.working({ what })}</p>;
  const isStale = standing === 'working';
  return (
    <div className={isStale ? 'worked-out stale' : 'worked-out'} aria-busy={isStale}>
      <p className="field-hint">{isStale ? words.stale : words.current}</p>
      {children}
    </div>
  );
}

/** Why something could not be worked out, and how to go on. */
export function NotWorkedOut({ part, what }: Pick<WorkedOutProps, 'part' | 'what'>) {
  const { workedOut: words, common } = useWords().window.frame;
  const why = useApp((state) => state.analysis?.failed[part]);
  return (
    <div className="worked-out">
      <p className="field-problem">{words.failed({ what: capital(what), why: why ?? '' })}</p>
      <p className="buttons">
        <button type="button" onClick={() => analysis.tryAgain()}>
          {common.tryAgain}
        </button>
      </p>
    </div>
  );
}
