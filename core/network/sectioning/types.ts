/**
 * The sectioning problem without geometry: runs of fence (and zero-length junctions), the places where a cut-out
 * switch could go, and the limits a section must keep.
 */

/** A piece of fence that can't be divided; a junction is a run of length zero. */
export interface SectioningRun {
  readonly id: string;
  /** Metres of fence, at least 0. */
  readonly lengthM: number;
  /** Gateways counted with this run, at least 0 (default 0). */
  readonly gateways?: number;
}

/** A place where a switch could go: with a switch there the two runs can be parted, without one they are joined. */
export interface SwitchCandidate {
  readonly id: string;
  readonly a: string;
  readonly b: string;
  /** Relative cost of putting a switch here, at least 0; decimals to nine places are kept exactly. */
  readonly cost: number;
}

export interface SectioningNetwork {
  readonly runs: readonly SectioningRun[];
  readonly candidates: readonly SwitchCandidate[];
  /** Pairs of runs that are always joined. */
  readonly joints?: readonly (readonly [string, string])[];
  /** The run the energiser feeds. */
  readonly source: string;
  /** Most metres of fence in a section; a section exactly this long is allowed. */
  readonly maxSectionM: number;
  /** Most gateways in a section; null or absent: no limit. */
  readonly maxGateways?: number | null;
  /** Most runs in a section, junctions counted; null or absent: no limit. */
  readonly maxRunsPerSection?: number | null;
  /** Candidates where a switch is put whatever it costs. */
  readonly forced?: readonly string[];
  /** Candidates where no switch may be put. */
  readonly forbidden?: readonly string[];
}

/** Lets a caller follow a long calculation and stop it. */
export interface Watch {
  shouldStop(): boolean;
  /** `fraction` from 0 to 1. */
  progress(fraction: number): void;
}

export interface SectioningOptions {
  /** Each forced switch must also have its two sides in different sections (default: on a ring it need not). */
  readonly forcedMustSeparate?: boolean;
  /**
   * Runs over a limit by themselves do not stop the plan: each is left as a section of its own, named in `overLimit`,
   * and the rest is planned as well as it can be (default: false).
   */
  readonly bestEffort?: boolean;
  /**
   * Steps that may be spent on ringed networks, roughly 20 million a second. The answer depends on this number and never
   * on the clock. Default: 200 million.
   */
  readonly workBudget?: number;
  readonly watch?: Watch;
}

/** What stays joined when every switch is open. */
export interface PlannedSection {
  readonly runs: readonly string[];
  readonly lengthM: number;
  readonly gateways: number;
}

/** Runs joined for good that are over a limit by themselves. */
export interface OverLimitGroup {
  readonly runs: readonly string[];
  readonly lengthM: number;
  readonly gateways: number;
  readonly overByM: number;
  readonly overByGateways: number;
  readonly overByRuns: number;
}

export interface SectioningPlan {
  readonly outcome: 'plan';
  /** Ids of the candidates that get a switch, in the order they were given. */
  readonly chosen: readonly string[];
  readonly cost: number;
  /** The section the energiser feeds comes first. */
  readonly sections: readonly PlannedSection[];
  readonly longestSectionM: number;
  /** The cost is proven to be the least possible. */
  readonly optimal: boolean;
  /** No plan costs less than this; equal to `cost` when `optimal`. */
  readonly lowerBoundCost: number;
  /** Among plans of this cost none is proven to have a shorter longest section. */
  readonly longestProven: boolean;
  /** The planning was gone on with to its end; otherwise a better plan may yet be found. */
  readonly complete: boolean;
  /** How far the plan can be from the best possible. */
  readonly bound: {
    /** Cost above the lower bound. */
    readonly costMore: number;
    /** The same in switches of the cheapest kind that could be left out, rounded up. */
    readonly switchesMore: number;
  };
  /** Runs over a limit by themselves (only with `bestEffort`). */
  readonly overLimit: readonly OverLimitGroup[];
  /** Runs with no way from the energiser; they are divided all the same. */
  readonly unfedRuns: readonly string[];
}

export interface SectioningImpossible {
  readonly outcome: 'impossible';
  readonly reason: 'runsOverLimit' | 'forcedCannotSeparate';
  /** Every run longer than the limit, alone or with the runs it is joined to for good, in the order given. */
  readonly tooLongRuns: readonly string[];
  readonly overLimit: readonly OverLimitGroup[];
  /** Forced switches whose two sides are joined for good (only with `forcedMustSeparate`). */
  readonly forcedCannotSeparate: readonly string[];
}

export interface SectioningStopped {
  readonly outcome: 'stopped';
}

export type SectioningResult = SectioningPlan | SectioningImpossible | SectioningStopped;
