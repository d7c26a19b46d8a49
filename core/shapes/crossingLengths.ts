import { arcFigures } from '../geometry/arc.ts';
import { earthCableLengthM, liveCableLengthM, pipeLengthM } from '../geometry/conduit.ts';
import { xyDistanceM } from '../geometry/vector.ts';
import type { Crossing, CrossingDefaults } from '../model/things.ts';
import type { GatewaySpan } from './gatewaySpan.ts';

/** All lengths of a crossing, metres. */
export interface CrossingLengths {
  /** How far the middle of the trench stands off the straight line; never below 0. */
  readonly bowM: number;
  readonly bowAssumed: boolean;
  /** Straight from post to post. */
  readonly chordM: number;
  /** Infinity for a straight trench. */
  readonly bendRadiusM: number;
  readonly trenchM: number;
  readonly pipeM: number;
  readonly liveCableM: number;
  readonly earthCableM: number;
}

type Posts = Pick<GatewaySpan, 'startPost' | 'endPost'>;

interface Kept {
  readonly span: Posts;
  readonly defaults: CrossingDefaults;
  readonly lengths: CrossingLengths;
}

const kept = new WeakMap<Crossing, Kept>();

/**
 * Lengths of a buried crossing by the formulas of `core/geometry/conduit.ts`. An overhead one has no trench or pipe: its
 * live cable goes straight from post to post, up and down `riserHeightM` at each, with the allowance and both tails; its
 * earth wire, where it has one, goes the same way without tails (assumptions of this project). Worked out once for each
 * crossing, span and defaults.
 */
export function crossingLengths(crossing: Crossing, span: Posts, defaults: CrossingDefaults): CrossingLengths {
  let known = kept.get(crossing);
  if (known?.span !== span || known.defaults !== defaults) {
    known = { span, defaults, lengths: measure(crossing, span, defaults) };
    kept.set(crossing, known);
  }
  return known.lengths;
}

function measure(crossing: Crossing, span: Posts, defaults: CrossingDefaults): CrossingLengths {
  const chordM = xyDistanceM(span.startPost, span.endPost);
  const { riserHeightM, allowanceM, tailM, depthM } = crossing;
  if (crossing.method === 'overhead') {
    const overM = chordM + 2 * riserHeightM + allowanceM;
    const none = { bowM: 0, bowAssumed: false, bendRadiusM: Infinity, trenchM: 0, pipeM: 0 };
    return { ...none, chordM, liveCableM: overM + 2 * tailM, earthCableM: crossing.earth ? overM : 0 };
  }
  const bowAssumed = crossing.bowM === null || !Number.isFinite(crossing.bowM);
  const bowM = bowAssumed ? defaults.bowShare * chordM : Math.abs(crossing.bowM!);
  const { radiusM: bendRadiusM, lengthM: trenchM } = arcFigures(chordM, bowM);
  const pipe = { trenchM, depthM, riserHeightM, allowanceM };
  return {
    bowM,
    bowAssumed,
    chordM,
    bendRadiusM,
    trenchM,
    pipeM: pipeLengthM(pipe),
    liveCableM: liveCableLengthM(pipe, tailM),
    earthCableM: crossing.earth ? earthCableLengthM(pipe, crossing.earthConnectionM) : 0,
  };
}
