import type { Finding, Fix } from '../../core/checks/finding.ts';
import type { Change } from '../../core/model/difference.ts';
import type { Thing } from '../../core/model/things.ts';
import type { FitAnswer } from '../../core/survey/power/fitReadings.ts';
import type { PowerTables } from '../../core/survey/power/powerTables.ts';
import type { DividePlan } from '../../core/survey/types.ts';

/** What is worked out beside the window, each by itself. */
export type AnalysisPart = 'findings' | 'power' | 'fit' | 'plan';

/** Which of it is on the screen and can't wait until the user rests: the division, or the tables and the fit of Power. */
export type Shown = 'plan' | 'power' | null;

/** What the window sends to the worker, which keeps its own copy of the project in step. */
export type ToAnalysis =
  | { readonly type: 'reset'; readonly things: readonly Thing[]; readonly revision: number }
  | { readonly type: 'changed'; readonly changes: readonly Change[]; readonly revision: number }
  | { readonly type: 'shown'; readonly shown: Shown }
  /** Which readings the leakage is to be fitted to: those of the round that ended on a day, or all (null). */
  | { readonly type: 'fitRound'; readonly lastDay: string | null }
  /** No better plan is to be looked for, or after that: it is again. */
  | { readonly type: 'stopPlan' }
  | { readonly type: 'goOnPlan' };

/** A finding on its way between threads: the edits of its fixes are functions and stay behind. */
export type SentFinding = Omit<Finding, 'fixes'> & { readonly fixes: readonly Pick<Fix, 'label'>[] };

/** Each with the state of the drawing that it is of. */
export type FromAnalysis = { readonly revision: number } & (
  | { readonly type: 'findings'; readonly findings: readonly SentFinding[] }
  | { readonly type: 'power'; readonly tables: PowerTables }
  | { readonly type: 'fit'; readonly fit: FitAnswer }
  /** An answer, the best so far. */
  | { readonly type: 'plan'; readonly plan: DividePlan | null }
  /** How far the plan is, 0 to 1; null when it is not being worked on any more. */
  | { readonly type: 'planning'; readonly fraction: number | null }
  /** Something could not be worked out; with no part: the worker's copy of the project is not to be trusted. */
  | { readonly type: 'failed'; readonly part: AnalysisPart | null; readonly message: string }
  /** There is nothing more to do for this state. */
  | { readonly type: 'settled' }
);
