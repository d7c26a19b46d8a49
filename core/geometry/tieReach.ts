import { largestOf } from '../model/extremes.ts';
import { meetOfTwoTies } from './meetOfTwoTies.ts';
import type { Side, Tie } from './tie.ts';
import type { Xy } from './types.ts';
import { xyDistanceM } from './vector.ts';

/**
 * How far from a place two tapes let their point lie, metres, each tape taken off by up to `factor` of its standard
 * errors either way. Where the tapes only just meet, the first-order error says nothing (it grows without bound), and
 * this does. `side`: the point is known to lie on this side of the line of the posts; null: on either. The posts must not
 * coincide.
 */
export function tieReachM(a: Tie, b: Tie, from: Xy, factor: number, side: Side | null = null): number {
  const off = [-factor, factor];
  const corners = off.flatMap((p) =>
    off.flatMap((q): Xy[] => {
      const meet = meetOfTwoTies(stretched(a, p), stretched(b, q));
      if (!meet.possible) return [];
      const own = meet.solutions.filter((fix) => side === null || fix.side === side || fix.side === 'onLine');
      return own.map(({ point }) => point);
    }),
  );
  const leastM = factor * Math.max(a.seM, b.seM);
  return Math.max(leastM, largestOf(corners.map((corner) => xyDistanceM(from, corner))));
}

/** A tape of no length has no direction: it keeps a hair. */
function stretched(tie: Tie, factor: number): Tie {
  return { ...tie, distanceM: Math.max(1e-6, tie.distanceM + factor * tie.seM) };
}
