import type { LocalPlane } from '../geometry/localPlane.ts';
import type { Xy } from '../geometry/types.ts';
import { scale, xyBearingDeg } from '../geometry/vector.ts';
import { keptWhile } from '../model/memo.ts';
import type { Project } from '../model/project.ts';
import type { LineEnd } from '../model/things.ts';
import type { Feed } from '../network/feed.ts';
import type { Network } from '../network/types.ts';
import { type GatewaySpan, gatewaySpan } from '../shapes/gatewaySpan.ts';
import { directionAt, type MeasuredPath, measuredPath, wrapStation } from '../shapes/measuredPath.ts';
import type { GatewayShape } from '../shapes/types.ts';

/** The shape of every gateway whose line is there, by gateway id. A gateway that stands as before keeps its object. */
export function gatewayShapes(
  project: Project,
  plane: LocalPlane,
  network: Network,
  feed: Feed,
): Map<string, GatewayShape> {
  const supplyFrom = supplyPosts(network, feed);
  const shapes = new Map<string, GatewayShape>();
  for (const gateway of project.gateway.values()) {
    const line = project.fenceLine.get(gateway.lineId);
    const geometry = line && measuredPath(line.path, plane);
    if (!geometry) continue;
    const span = gatewaySpan(gateway, geometry);
    const supply = supplyFrom.get(gateway.id) ?? null;
    shapes.set(gateway.id, shapeOf(span, geometry, line.live, supply));
  }
  return shapes;
}

const shapeOf = keptWhile(makeShape);

function makeShape(
  span: GatewaySpan,
  geometry: MeasuredPath,
  lineLive: boolean,
  supplyFrom: LineEnd | 'both' | null,
): GatewayShape {
  const { gateway, startPost, endPost, startPostAt, endPostAt, fromM, toM } = span;
  const [sx, sy] = startPost;
  const [ex, ey] = endPost;
  const centre: Xy = [(sx + ex) / 2, (sy + ey) / 2];
  const apart = sx !== ex || sy !== ey;
  // Where both posts are one point the line itself gives the direction.
  const ahead = apart ? endPost : directionAt(geometry, wrapStation(fromM, geometry));
  const bearingDeg = xyBearingDeg(apart ? startPost : scale(ahead, 0), ahead);
  return {
    gateway,
    lineLive,
    startPost,
    endPost,
    startPostAt,
    endPostAt,
    centre,
    bearingDeg,
    fromM,
    toM,
    supplyFrom,
  };
}

/** By gateway id, which post the supply comes from; a gateway that is not fed is left out. */
function supplyPosts(network: Network, feed: Feed): Map<string, LineEnd | 'both'> {
  const supply = new Map<string, LineEnd | 'both'>();
  const crossed = new Set<string>();
  for (let index = 0; index < network.edges.length; index++) {
    const edge = network.edges[index]!;
    if (edge.kind !== 'crossing') continue;
    crossed.add(edge.gatewayId);
    if (feed.positionOf[edge.from] === -1) continue;
    if (!feed.onlyWay[index]) supply.set(edge.gatewayId, 'both');
    else supply.set(edge.gatewayId, feed.edgeInto[edge.to] === index ? 'start' : 'end');
  }
  for (const [gatewayId, [start, end]] of network.postsOfGateway) {
    if (crossed.has(gatewayId)) continue;
    const startFed = feed.positionOf[start] !== -1;
    const endFed = feed.positionOf[end] !== -1;
    if (startFed && endFed) supply.set(gatewayId, 'both');
    else if (startFed || endFed) supply.set(gatewayId, startFed ? 'start' : 'end');
  }
  return supply;
}
