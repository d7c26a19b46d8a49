import type { CircuitPlace } from '../../electrical/effects/weakestPlace.ts';
import type { Project } from '../../model/project.ts';
import type { Network, Run } from '../../network/types.ts';
import { lonLatAt } from '../../shapes/measuredPath.ts';
import type { Spot } from '../../words/en/survey/spots.ts';
import { spotAt } from '../spotAt.ts';
import { geometryOfLine } from '../switchPlaces.ts';
import type { Survey } from '../types.ts';
import type { FencePlace, SupplyCircuit } from './types.ts';

/** A place of a circuit on the fence. */
export function fencePlace(
  project: Project,
  survey: Survey,
  { edgeOfSpan }: Pick<SupplyCircuit, 'edgeOfSpan'>,
  place: CircuitPlace,
  volts: number,
): FencePlace {
  const { network } = survey;
  if (place.on === 'node') {
    const { node } = place;
    const { spot, thingId } = atNode(project, network, node);
    return { volts, spot, at: network.nodes[node]!.at, thingId, where: { on: 'node', node } };
  }
  const edge = edgeOfSpan[place.span]!;
  const run = network.edges[edge] as Run;
  const stationM = run.fromM + place.distanceM;
  const geometry = geometryOfLine(project, survey.plane, run.lineId);
  return {
    volts,
    spot: onLine(project, run.lineId, stationM),
    at: geometry ? lonLatAt(geometry, stationM) : network.nodes[run.from]!.at,
    thingId: run.lineId,
    where: { on: 'run', edge, distanceM: place.distanceM },
  };
}

/** What stands at a node, and its id. */
function atNode(project: Project, network: Network, node: number): { spot: Spot; thingId: string | null } {
  const edges = network.edgesAt[node]!.map((index) => network.edges[index]!);
  const own = edges.find(({ kind }) => kind === 'switch') ?? edges.find(({ kind }) => kind === 'crossing');
  const run = edges.find((edge): edge is Run => edge.kind === 'run');
  const { roles } = network.nodes[node]!;
  const spot = spotAt(project, network, node);
  if (own?.kind === 'switch') return { spot, thingId: own.switchId };
  if (own?.kind === 'crossing') return { spot, thingId: own.gatewayId };
  if (!run) {
    const leadOut = edges.find(({ kind }) => kind === 'leadOut');
    const id = leadOut?.kind === 'leadOut' ? leadOut.leadOutId : null;
    const source = network.sources.find((each) => each.node === node);
    return { spot, thingId: source?.energiserId ?? id };
  }
  if (roles.includes('gatePost') || roles.includes('lineEnd')) return { spot, thingId: run.lineId };
  return { spot: onLine(project, run.lineId, run.from === node ? run.fromM : run.toM), thingId: run.lineId };
}

function onLine(project: Project, lineId: string, stationM: number): Spot {
  return { on: 'along', line: project.fenceLine.get(lineId)?.name ?? null, atM: stationM };
}
