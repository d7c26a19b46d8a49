import { voltageAlongSpan } from '../../electrical/voltageAlongSpan.ts';
import { edgeLengthM, shortestWays, wayTo } from '../../network/shortestWays.ts';
import type { NetworkEdge } from '../../network/types.ts';
import type { Estimate, FencePlace, Power } from './types.ts';

/** The voltage on the way from the energiser to a place. */
export interface Profile {
  readonly points: readonly ProfilePoint[];
  /** Gateways and switches passed, in order. */
  readonly marks: readonly ProfileMark[];
  readonly lengthM: number;
}

export interface ProfilePoint {
  /** Of fence and cable from the energiser. */
  readonly distanceM: number;
  readonly volts: number;
}

export interface ProfileMark extends ProfilePoint {
  readonly name: string;
  readonly thingId: string;
}

/** Points along the whole way, about; each run has its two ends at least. */
const pointsAlong = 120;

/** Along the shortest way that the switches let through, inside runs as well; null where there is none. */
export function profileTo(power: Power, estimate: Estimate, place: FencePlace): Profile | null {
  const { network } = power.survey;
  const { edges } = network;
  const passes = (index: number): boolean => {
    const edge = edges[index]!;
    return edge.kind !== 'switch' || !estimate.openSwitchIds.has(edge.switchId);
  };
  const ways = shortestWays(network, passes);
  const { where } = place;
  const part = where.on === 'run' ? { ...where, run: edges[where.edge]! } : null;
  const last = part ? nearerEnd(part.run, part.distanceM, ways.distanceM) : null;
  const node = where.on === 'node' ? where.node : last!.node;
  if (!(ways.distanceM[node]! < Infinity)) return null;
  const way = wayTo(network, ways, node);
  const lengthM = ways.distanceM[node]! + (last?.lengthM ?? 0);
  const stepM = Math.max(1, lengthM / pointsAlong);
  const draft = new ProfileDraft(power, estimate, stepM);
  let at = startOf(edges, way, node);
  draft.begin(at);
  for (const index of way) at = draft.along(index, at, edgeLengthM(edges[index]!));
  if (where.on === 'run' && last) draft.along(where.edge, at, last.lengthM);
  return { points: draft.points, marks: draft.marks, lengthM };
}

/** The energiser's node: where the way to `node` begins. */
function startOf(edges: readonly NetworkEdge[], way: readonly number[], node: number): number {
  return way.reduceRight((at, index) => (edges[index]!.from === at ? edges[index]!.to : edges[index]!.from), node);
}

/** The end of a run from which a place in it is the shorter walk. */
function nearerEnd(run: NetworkEdge, distanceM: number, walkM: Float64Array): { node: number; lengthM: number } {
  const behindM = edgeLengthM(run) - distanceM;
  return walkM[run.from]! + distanceM <= walkM[run.to]! + behindM
    ? { node: run.from, lengthM: distanceM }
    : { node: run.to, lengthM: behindM };
}

class ProfileDraft {
  readonly points: ProfilePoint[] = [];
  readonly marks: ProfileMark[] = [];
  readonly #power: Power;
  readonly #estimate: Estimate;
  readonly #stepM: number;
  #distanceM = 0;

  constructor(power: Power, estimate: Estimate, stepM: number) {
    this.#power = power;
    this.#estimate = estimate;
    this.#stepM = stepM;
  }

  begin(node: number): void {
    this.points.push({ distanceM: 0, volts: this.#estimate.nodeV[node]! });
  }

  /** Goes `lengthM` along an edge from one of its ends; answers the node at its other end. */
  along(index: number, fromNode: number, lengthM: number): number {
    const { survey, project, supplies, supplyOfNode, spanOfEdge } = this.#power;
    const edge = survey.network.edges[index]!;
    const { nodeV } = this.#estimate;
    const forwards = edge.from === fromNode;
    const other = forwards ? edge.to : edge.from;
    const span = supplies[supplyOfNode[fromNode]!]?.circuit.spans[spanOfEdge[index]!];
    const steps = span ? Math.max(1, Math.ceil(lengthM / this.#stepM)) : 1;
    const wholeM = edgeLengthM(edge);
    for (let i = 1; i <= steps; i++) {
      const goneM = (lengthM * i) / steps;
      const share = wholeM === 0 ? 1 : goneM / wholeM;
      const volts = span
        ? voltageAlongSpan(span, nodeV[edge.from]!, nodeV[edge.to]!, forwards ? goneM : wholeM - goneM)
        : nodeV[fromNode]! + share * (nodeV[other]! - nodeV[fromNode]!);
      this.points.push({ distanceM: this.#distanceM + goneM, volts });
    }
    const mark = { distanceM: this.#distanceM, volts: nodeV[fromNode]! };
    if (edge.kind === 'crossing') {
      const name = project.gateway.get(edge.gatewayId)?.name ?? edge.gatewayId;
      this.marks.push({ ...mark, name, thingId: edge.gatewayId });
    } else if (edge.kind === 'switch') {
      const name = project.switch.get(edge.switchId)?.name ?? edge.switchId;
      this.marks.push({ ...mark, name, thingId: edge.switchId });
    }
    this.#distanceM += lengthM;
    return other;
  }
}
