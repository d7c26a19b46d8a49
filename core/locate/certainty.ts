/** How sure the place of a buried thing is, the surest first. */
export const bases = ['measured', 'partly', 'ambiguous', 'contradictory', 'drawn'] as const;

/**
 * measured: every point that it needs was. partly: some were, the rest is as drawn. ambiguous: the tapes of a point fit
 * several places, and nobody said which. contradictory: the tapes of a point do not meet. drawn: nothing was measured.
 */
export type Basis = (typeof bases)[number];

/**
 * How far off the place of a buried thing may be. What was measured carries its error; what was only drawn carries an
 * assumption of this project, and is called one. The whole is as sure as its least sure point.
 */
export interface Certainty {
  /**
   * The thing lies within this of where it is shown, 19 times in 20 where it was measured. Where it may lie in several
   * places, this reaches from the one that is shown over all others. Metres.
   */
  readonly withinM: number;
  readonly basis: Basis;
}

/** The tapes leave it open where it lies: whatever shows the place has to warn. */
export function leavesOpen(basis: Basis): boolean {
  return basis === 'ambiguous' || basis === 'contradictory';
}

/** Assumptions of this project, in metres; nobody has measured them. */
export const assumedM = {
  /** How far a trench strays between the points that were measured. */
  betweenPoints: 0.2,
  /** A trench whose bow was measured and nothing else; and how far a riser foot that is only drawn stands off. */
  bowOnly: 0.5,
  /** A trench that is only drawn: this, and its whole bow besides. */
  drawnTrench: 1,
  /** A lead-out or another buried service that is only drawn. */
  drawnService: 2,
} as const;
