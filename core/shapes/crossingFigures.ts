import { arcFigures } from '../geometry/arc.ts';
import { earthCableLengthM, liveCableLengthM, pipeLengthM } from '../geometry/conduit.ts';
import type { LocalPlane } from '../geometry/localPlane.ts';
import { keptWhile } from '../model/memo.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { Crossing, CrossingDefaults, Gateway } from '../model/things.ts';
import { gatewaySpan } from './gatewaySpan.ts';
import { measuredPath } from './measuredPath.ts';
import { type Posts, trenchUnder } from './trench.ts';
import type { CrossingFigures } from './types.ts';

/** Path and lengths of the crossing of each gateway that has one, by gateway id. */
export function allCrossingFigures(project: Project, plane: LocalPlane): Map<string, CrossingFigures> {
  const defaults = propertyOf(project).crossings;
  const figures = new Map<string, CrossingFigures>();
  for (const crossing of project.crossing.values()) {
    const gateway = project.gateway.get(crossing.gatewayId);
    const line = gateway && project.fenceLine.get(gateway.lineId);
    const path = line && measuredPath(line.path, plane);
    if (!gateway || !path || figures.has(gateway.id)) continue;
    figures.set(gateway.id, crossingFigures(crossing, gateway, gatewaySpan(gateway, path), defaults));
  }
  return figures;
}

/**
 * Path and lengths of a crossing between two posts, by the formulas of `core/geometry/conduit.ts`. The trench bows to
 * `bowSide`, looking along the line from its start to its end; Turf measures from post to post and sets the trench out
 * on the earth. An overhead crossing has no trench or pipe: its live cable goes straight from post to post, up and down
 * `riserHeightM` at each, with the allowance and both tails; its earth wire, where it has one, goes the same way without
 * tails (assumptions of this project). Worked out once for each crossing between the same posts.
 */
export const crossingFigures = keptWhile(
  (crossing: Crossing, gateway: Gateway, posts: Posts, defaults: CrossingDefaults): CrossingFigures => {
    const lengths = lengthsOf(crossing, posts.plane.earth.distanceM(posts.startPostAt, posts.endPostAt), defaults);
    return {
      crossing,
      gateway,
      ...lengths,
      path: trenchUnder(posts, crossing.bowSide === 'left' ? lengths.bowM : -lengths.bowM),
      tighterThanPipeAllows: lengths.bendRadiusM < crossing.minBendRadiusM,
    };
  },
);

type Lengths = Omit<CrossingFigures, 'crossing' | 'gateway' | 'path' | 'tighterThanPipeAllows'>;

function lengthsOf(crossing: Crossing, chordM: number, defaults: CrossingDefaults): Lengths {
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
