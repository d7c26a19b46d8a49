/** What a reading was judged by: kept with it, so that the record says why it counted as good or low. */
export interface Yardstick {
  /** What the place usually reads with the switches as they then stood; null: not known. */
  readonly usualV: number | null;
  /**
   * `reading`: an earlier reading there; `estimate`: the estimate there; `stock`: neither was to be had, so only what holds
   * the stock; `own`: limits that somebody set.
   */
  readonly by: 'reading' | 'estimate' | 'stock' | 'own';
  /** ISO 8601 date of the earlier reading. */
  readonly readOn?: string;
  /** A reading under `lowBelowV` is low, one of at least `goodFromV` good; between them it is doubtful. */
  readonly lowBelowV: number;
  readonly goodFromV: number;
}

export type Limits = Pick<Yardstick, 'lowBelowV' | 'goodFromV'>;
