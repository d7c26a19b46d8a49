import type { CrossingAsBuilt } from './crossingAsBuilt.ts';

/**
 * How far off the place of a buried thing may be. What was measured carries its standard error; what was only drawn
 * carries an assumption of this project, and is called one.
 */
export interface Certainty {
  /** The thing lies within this of where it is shown, about 95 times in 100 for what was measured. Metres. */
  readonly withinM: number;
  readonly basis: 'measured' | 'partly' | 'drawn';
  /** Standard error of the worst measured point, metres; null where nothing tells it. */
  readonly seM: number | null;
}

/**
 * Of a point with the same standard error all ways, 95 in 100 lie within this many of them: square root of the 95 % point
 * of chi-square with two degrees of freedom, 5.991. Taken on the total standard error, it is on the safe side.
 */
export const sureFactor = 2.448;

/** Assumptions of this project, in metres; nobody has measured them. */
export const assumedM = {
  /** How far a trench strays between the points that were measured. */
  betweenPoints: 0.2,
  /** A trench whose bow was measured and nothing else. */
  bowOnly: 0.5,
  /** A trench that is only drawn: this, and its whole bow besides. */
  drawnTrench: 1,
  /** A lead-out or another buried service that is only drawn. */
  drawnService: 2,
  /** A point whose tapes do not quite meet. */
  roughPoint: 0.3,
} as const;

/** How surely the trench of a crossing is known, seen from its own gate posts. */
export function certaintyOf({ points, figures, seM }: CrossingAsBuilt): Certainty {
  const fixed = points.filter(({ xy }) => xy !== null);
  if (fixed.length === 0) {
    const withinM = figures.bowAssumed ? assumedM.drawnTrench + figures.bowM : assumedM.bowOnly;
    return { withinM, basis: figures.bowAssumed ? 'drawn' : 'partly', seM: null };
  }
  const rough = fixed.some((point) => point.seM === null) ? assumedM.roughPoint : 0;
  const measuredM = Math.max(sureFactor * (seM ?? 0), rough) + assumedM.betweenPoints;
  const between = fixed.some(({ point }) => point.role === 'bend' || point.role === 'point');
  if (between) return { withinM: measuredM, basis: 'measured', seM };
  // Where the trench bows was not measured, only where it ends.
  return { withinM: measuredM + (figures.bowAssumed ? figures.bowM : 0), basis: 'partly', seM };
}

/** Of one measured point. */
export function pointWithinM(seM: number | null): number {
  return seM === null ? assumedM.roughPoint : sureFactor * seM;
}
