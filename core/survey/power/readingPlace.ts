import type { CircuitPlace } from '../../electrical/effects/weakestPlace.ts';
import { nearestOnPolyline } from '../../geometry/polyline.ts';
import type { LonLat, Xy } from '../../geometry/types.ts';
import { xyDistanceM } from '../../geometry/vector.ts';
import type { Run } from '../../network/types.ts';
import { measuredPath, stationOf } from '../../shapes/measuredPath.ts';
import { isPlaceOnEarth } from '../../shapes/workingPlane.ts';
import { type Estimate, nothingFeedsIt, notKnown, type Power } from './types.ts';

/** A reading further than this from any live wire is laid beside none (an assumption: twice a poor handheld fix). */
export const READING_REACH_M = 30;

/** Nodes this near to each other are one place: the two sides of a switch. */
const SAME_PLACE_M = 1;

export interface ReadingPlace {
  /** Index of the supply whose circuit the place is in; `nothingFeedsIt` or `notKnown` where there is none. */
  readonly supply: number;
  readonly place: CircuitPlace;
  readonly distanceM: number;
}

/**
 * Where on the fence something was read: a node within a metre of the nearest place (of several, such as the two sides
 * of a switch, the one that reads most with the switches as they then stood), else the place along a run. Null where
 * no live wire is near.
 */
export function readingPlace(power: Power, estimate: Estimate, lonLat: LonLat): ReadingPlace | null {
  if (!isPlaceOnEarth(lonLat)) return null;
  const { survey, supplyOfNode, spanOfEdge } = power;
  const { network } = survey;
  const xy = survey.plane.toXy(lonLat);
  const onRun = nearestRun(power, xy);
  const nodes = nodesNear(power, xy);
  const nearestM = Math.min(onRun?.distanceM ?? Infinity, nodes[0]?.distanceM ?? Infinity);
  if (!(nearestM <= READING_REACH_M)) return null;
  const here = nodes.filter(({ distanceM }) => distanceM <= nearestM + SAME_PLACE_M);
  if (here.length > 0) {
    const value = (node: number) => (estimate.nodeFed[node] === 1 ? estimate.nodeV[node]! : -1);
    const { node, distanceM } = here.reduce((a, b) => (value(b.node) > value(a.node) ? b : a));
    return { supply: supplyOfNode[node]!, place: { on: 'node', node }, distanceM };
  }
  const { edge, distanceM, alongM } = onRun!;
  const supply = supplyOfNode[network.edges[edge]!.from]!;
  const isIn = supply !== nothingFeedsIt && supply !== notKnown;
  const span = isIn ? spanOfEdge[edge]! : -1;
  const place: CircuitPlace = isIn
    ? { on: 'span', span, distanceM: alongM }
    : { on: 'node', node: network.edges[edge]!.from };
  return { supply, place, distanceM };
}

function nodesNear({ survey }: Power, xy: Xy): { node: number; distanceM: number }[] {
  const found: { node: number; distanceM: number }[] = [];
  for (const [node, { xy: at }] of survey.network.nodes.entries()) {
    const distanceM = xyDistanceM(at, xy);
    if (distanceM <= READING_REACH_M) found.push({ node, distanceM });
  }
  return found.sort((a, b) => a.distanceM - b.distanceM);
}

function nearestRun({ survey, project }: Power, xy: Xy): { edge: number; distanceM: number; alongM: number } | null {
  const { network, plane } = survey;
  let nearest: { edge: number; distanceM: number; alongM: number } | null = null;
  for (const [lineId, runs] of network.runsOfLine) {
    const geometry = measuredPath(project.fenceLine.get(lineId)?.path ?? [], plane);
    if (!geometry || isFarFrom(geometry.box, xy)) continue;
    const found = nearestOnPolyline(xy, geometry.xy);
    if (!found || found.distanceM > (nearest?.distanceM ?? READING_REACH_M)) continue;
    const stationM = stationOf(geometry, found);
    const edge = runs.find((index) => {
      const { fromM, toM } = network.edges[index] as Run;
      return fromM <= stationM && stationM <= toM;
    });
    // Inside an opening there is no wire.
    if (edge === undefined) continue;
    const { fromM } = network.edges[edge] as Run;
    nearest = { edge, distanceM: found.distanceM, alongM: stationM - fromM };
  }
  return nearest;
}

function isFarFrom([west, south, east, north]: readonly [number, number, number, number], [x, y]: Xy): boolean {
  const reach = READING_REACH_M;
  return x < west - reach || x > east + reach || y < south - reach || y > north + reach;
}
