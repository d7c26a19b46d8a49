import type { Finding, Fix } from '../../core/checks/finding.ts';
import type { Change } from '../../core/model/difference.ts';
import type { Thing } from '../../core/model/things.ts';
import type { FitAnswer } from '../../core/registers/power/fitReadings.ts';
import type { PowerTables } from '../../core/registers/power/powerTables.ts';
import type { DividePlan } from '../../core/registers/types.ts';

/** What the window sends to the back room, which keeps its own copy of the project in step. */
export type ToBackroom =
  | { readonly type: 'reset'; readonly things: readonly Thing[]; readonly revision: number }
  | { readonly type: 'changed'; readonly changes: readonly Change[]; readonly revision: number }
  /** Which readings the leakage is to be fitted to: those of the round that ended on a day, or all (null). */
  | { readonly type: 'fitRound'; readonly lastDay: string | null; readonly revision: number };

/** A finding on its way between threads: the edits of its mends are functions and stay behind. */
export type SentFinding = Omit<Finding, 'fixes'> & { readonly fixes: readonly Pick<Fix, 'label'>[] };

export type FromBackroom = { readonly revision: number } & (
  | { readonly type: 'progress'; readonly fraction: number }
  | { readonly type: 'findings'; readonly findings: readonly SentFinding[] }
  | { readonly type: 'plan'; readonly plan: DividePlan | null }
  | { readonly type: 'power'; readonly tables: PowerTables }
  | { readonly type: 'fit'; readonly fit: FitAnswer }
  /** It takes an edit at once: the plan is begun when none comes for a moment. */
  | { readonly type: 'resting' }
  | { readonly type: 'done' }
  | { readonly type: 'failed'; readonly message: string }
);
