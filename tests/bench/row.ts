/** One line of the benchmark table; times in `unit`, `budget` is the most that `p95` may be, or what `budgetAt` names (null: no budget). */
export interface BenchRow {
  readonly name: string;
  readonly size: number;
  readonly median: number;
  readonly p95: number;
  readonly unit: 'ms';
  readonly budget: number | null;
  readonly budgetAt?: 'median';
  /** The same work by the library it is compared with, timed in the same run. */
  readonly other?: { readonly name: string; readonly median: number };
}
