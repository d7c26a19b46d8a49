import { arcPath } from '../geometry/arc.ts';
import type { LocalPlane } from '../geometry/localPlane.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { Crossing, CrossingDefaults, Gateway } from '../model/things.ts';
import type { CrossingFigures } from '../shapes/types.ts';
import { crossingLengths } from './crossingLengths.ts';
import { type GatewaySpan, gatewaySpan } from './gatewaySpan.ts';
import { measuredPath } from './measuredPath.ts';

interface Kept {
  readonly span: GatewaySpan;
  readonly defaults: CrossingDefaults;
  readonly figures: CrossingFigures;
}

const kept = new WeakMap<Crossing, Kept>();

/** Path and lengths of the crossing of each gateway that has one, by gateway id. */
export function allCrossingFigures(project: Project, plane: LocalPlane): Map<string, CrossingFigures> {
  const defaults = propertyOf(project).crossings;
  const figures = new Map<string, CrossingFigures>();
  for (const crossing of project.crossing.values()) {
    const gateway = project.gateway.get(crossing.gatewayId);
    const line = gateway && project.fenceLine.get(gateway.lineId);
    const geometry = line && measuredPath(line.path, plane);
    if (!gateway || !geometry || figures.has(gateway.id)) continue;
    const span = gatewaySpan(gateway, geometry);
    let known = kept.get(crossing);
    if (known?.span !== span || known.defaults !== defaults) {
      known = { span, defaults, figures: crossingFigures(crossing, gateway, span, defaults) };
      kept.set(crossing, known);
    }
    figures.set(gateway.id, known.figures);
  }
  return figures;
}

/**
 * Path and lengths of a crossing between two posts. The trench bows to `bowSide`, looking along the line from its start
 * to its end.
 */
export function crossingFigures(
  crossing: Crossing,
  gateway: Gateway,
  span: Pick<GatewaySpan, 'startPost' | 'endPost'>,
  defaults: CrossingDefaults,
): CrossingFigures {
  const lengths = crossingLengths(crossing, span, defaults);
  const signedBowM = crossing.bowSide === 'left' ? lengths.bowM : -lengths.bowM;
  return {
    crossing,
    gateway,
    ...lengths,
    path: arcPath(span.startPost, span.endPost, signedBowM),
    tighterThanPipeAllows: lengths.bendRadiusM < crossing.minBendRadiusM,
  };
}
