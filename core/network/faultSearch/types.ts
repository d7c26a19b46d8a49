/** A section as far as looking for a fault goes. */
export interface SearchSection {
  readonly id: string;
  readonly lengthM: number;
  /** How likely a fault is to be here, in any measure that is the same for all; default: the length. */
  readonly weight?: number;
}

export interface SearchSwitch {
  readonly id: string;
  readonly a: string;
  readonly b: string;
  /** What one test at this switch takes (walking, say); counted only where costs are asked for. Default 1. */
  readonly cost?: number;
}

export interface SearchNetwork {
  readonly sections: readonly SearchSection[];
  readonly switches: readonly SearchSwitch[];
  /** The section at the energiser. */
  readonly source: string;
  /** Ring switches that stand open already. */
  readonly normallyOpen?: readonly string[];
}

/**
 * What is made least: the tests to be expected (each section as likely as its weight says) or the most that can be
 * needed; tests counted as one each, or at their switch's cost.
 */
export type SearchAim = 'expectedTests' | 'worstCaseTests' | 'expectedCost' | 'worstCaseCost';

/** Open this switch and read: did the fence on the energiser's side recover? */
export interface TestStep {
  readonly test: string;
  /** The fault is on the far side of the switch. */
  readonly ifRecovers: SearchTree;
  /** The fault is still on the energiser's side. */
  readonly ifNot: SearchTree;
}

/** The fault is in this section. */
export interface Found {
  readonly fault: string;
}

export type SearchTree = TestStep | Found;

export interface SearchFigures {
  readonly expectedTests: number;
  readonly worstCaseTests: number;
  readonly expectedCost: number;
  readonly worstCaseCost: number;
}

export interface FaultSearchPlan extends SearchFigures {
  readonly aim: SearchAim;
  readonly tree: SearchTree;
  /** Ring switches to open before the first test, so that every section is fed one way. */
  readonly openFirst: readonly string[];
  /** The tree is proven best for its aim. */
  readonly optimal: boolean;
  /** No tree does better than this at the aim. */
  readonly lowerBound: number;
  /** Every switch that some best tree tests first; only where `optimal`, else the first test of the tree alone. */
  readonly firstTests: readonly string[];
  /** Sections with no way from the energiser: they can't be searched with it. */
  readonly unfed: readonly string[];
}
