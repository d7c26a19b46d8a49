/** Lengths that can be had, whole numbers of one unit. */
export interface RollSize {
  readonly length: number;
  /** How many there are; Infinity where they are bought. */
  readonly count: number;
  readonly bought: boolean;
}

/** One roll that is opened, and what is cut from it. */
export interface OpenedRoll {
  /** Index of its size. */
  readonly size: number;
  /** Indices of pieces, longest first. */
  readonly pieces: readonly number[];
}

export interface Packing {
  readonly rolls: readonly OpenedRoll[];
  /** Longer than every roll. */
  readonly tooLong: readonly number[];
  /** Left over because there are no more rolls. */
  readonly without: readonly number[];
  /** Proven: no way to cut buys fewer rolls, or as few and opens fewer, or as few and opens less length. */
  readonly optimal: boolean;
  /** Every way to cut buys and opens at least so many rolls; null where there are not enough rolls. */
  readonly least: { readonly bought: number; readonly rolls: number } | null;
}
