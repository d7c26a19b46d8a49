import type { PositionError } from './positionError.ts';
import type { Xy } from './types.ts';

/** One tape distance. */
export interface Tie {
  readonly post: Xy;
  readonly distanceM: number;
  /** Standard error of the distance, metres, above 0. */
  readonly seM: number;
}

/** Posts nearer to each other than this are one post. */
export const samePostM = 1e-5;

/** Which hand a point lies on, looking from the first tie's post to the second's. */
export type Side = 'left' | 'right' | 'onLine';

export interface TieFix {
  readonly point: Xy;
  readonly side: Side;
  /** Null where the ties do not fix the point across the line of the posts. */
  readonly error: PositionError | null;
  /** Measured minus fitted distance, metres, tie by tie. */
  readonly residualsM: readonly number[];
  /** Standard error of unit weight: about 1 when the tapes agree as well as they claim. Null with two ties. */
  readonly sigma0: number | null;
}

export type WhyImpossible =
  | 'tooFewTies'
  | 'onePost'
  /** Two tapes together are shorter than the posts are apart. */
  | 'tooShort'
  /** One tape is longer than the other and the distance between the posts together. */
  | 'tooLong'
  /** Three or more tapes do not meet at one point. */
  | 'disagree';

export type Trilateration =
  /** One point, or two where the ties cannot tell a point from its mirror: left first with two ties, else the better fit. */
  | { readonly possible: true; readonly solutions: readonly TieFix[] }
  | {
      readonly possible: false;
      readonly reason: WhyImpossible;
      /** By how much the circles of two ties fail to meet (negative); for more, the suspect's or the largest misfit. Null where that has no meaning. */
      readonly misclosureM: number | null;
      /** The one tie (from 0) that cannot be right, where the others leave no doubt. */
      readonly suspect: number | null;
      /** The point that comes nearest to satisfying all ties. */
      readonly closest: Xy | null;
      /** The tapes miss by no more than three of their standard errors, so `closest` may well be the point. */
      readonly withinTapeError: boolean;
    };

export type Impossible = Extract<Trilateration, { possible: false }>;
