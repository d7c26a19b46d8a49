import type { Link, Source, Span } from '../../electrical/circuit/circuit.ts';
import { cableOhm } from '../../electrical/conductors/cableOhm.ts';
import { leakageOhmKm } from '../../electrical/conductors/leakage.ts';
import { ohmPerKmInParallel } from '../../electrical/conductors/ohmPerKm.ts';
import { sourceThroughEarth } from '../../electrical/earth/sourceThroughEarth.ts';
import { energiserInternalOhm } from '../../electrical/energiser/internalOhm.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import type { Energiser } from '../../model/things.ts';
import type { Network, Run } from '../../network/types.ts';
import { EdgeConductors } from './conductorsOf.ts';
import { type FencePiece, fencePieces } from './fencePieces.ts';
import { labelProblemsOf, noEarthStakes, sourceProblems, twoEnergisers } from './problems.ts';
import { supplyEarth } from './supplyEarth.ts';
import { nothingFeedsIt, notKnown, type PowerProblem, type SupplyCircuit } from './types.ts';

export interface SupplyCircuits {
  readonly supplies: readonly SupplyCircuit[];
  readonly problems: readonly PowerProblem[];
  /** By network node: index in `supplies`, `nothingFeedsIt` or `notKnown`. */
  readonly supplyOfNode: Int32Array;
}

/**
 * A drawn network as circuits, one for each energiser and all that it can feed:
 *
 * - a run is a leaky line of its live wires side by side (resistance of one over their number), leaking by the growth on
 *   its line or else the property's, each live wire as much as the next;
 * - a crossing and a lead-out are the resistance of their cable, sound joints being none;
 * - a switch is a perfect joint, open or closed as it normally stands;
 * - the energiser is its label's open-circuit peak behind its internal resistance and its earth stakes in series.
 *
 * A fence that two energisers can feed, by whatever switches, gets no circuit: the rule is that it must never be.
 */
export function supplyCircuits(project: Project, network: Network): SupplyCircuits {
  const problems = sourceProblems(project, network);
  const supplyOfNode = new Int32Array(network.nodes.length).fill(nothingFeedsIt);
  const supplies: SupplyCircuit[] = [];
  const conductors = new EdgeConductors(project);
  for (const piece of fencePieces(network)) {
    const [source] = piece.sources;
    if (!source) continue;
    const found = problemsOf(project, network, piece, conductors);
    for (const problem of found) problems.push(problem);
    const refused = found.some(({ weight }) => weight === 'refused');
    for (const node of piece.nodes) supplyOfNode[node] = refused ? notKnown : supplies.length;
    if (refused) continue;
    const energiser = project.energiser.get(source.energiserId)!;
    const supply = supplyCircuit({ project, network, piece, conductors, energiser, sourceNode: source.node });
    if (supply.earth.ohm === null) problems.push(noEarthStakes(energiser));
    supplies.push(supply);
  }
  return { supplies, problems, supplyOfNode };
}

function problemsOf(
  project: Project,
  { edges }: Network,
  piece: FencePiece,
  conductors: EdgeConductors,
): PowerProblem[] {
  const ids = piece.sources.map(({ energiserId }) => energiserId);
  if (ids.length > 1) return [twoEnergisers(project, ids)];
  const energiser = project.energiser.get(ids[0]!)!;
  return [...labelProblemsOf(energiser), ...conductors.problems(piece.edges.map((index) => edges[index]!))];
}

interface Parts {
  readonly project: Project;
  readonly network: Network;
  readonly piece: FencePiece;
  readonly conductors: EdgeConductors;
  readonly energiser: Energiser;
  readonly sourceNode: number;
}

function supplyCircuit({ project, network, piece, conductors, energiser, sourceNode }: Parts): SupplyCircuit {
  const spans: Span[] = [];
  const links: Link[] = [];
  const edgeOfSpan: number[] = [];
  const edgeOfLink: number[] = [];
  const linkOfSwitch = new Map<string, number>();
  for (const index of piece.edges) {
    const edge = network.edges[index]!;
    const { from, to } = edge;
    if (edge.kind === 'run') {
      edgeOfSpan.push(index);
      spans.push(spanOf(project, edge, conductors.ohmPerKm(edge)!));
      continue;
    }
    edgeOfLink.push(index);
    if (edge.kind === 'switch') {
      linkOfSwitch.set(edge.switchId, links.length);
      links.push({ from, to, ohm: 0, open: edge.normally === 'open' });
    } else {
      const ohm = cableOhm({ lengthM: edge.cableLengthM, ohmPerKm: conductors.ohmPerKm(edge)! });
      links.push({ from, to, ohm, open: false });
    }
  }
  const internalOhm = energiserInternalOhm(energiser.openCircuitV, energiser.into500OhmV);
  const earth = supplyEarth(project, energiser.id);
  const source: Source = { node: sourceNode, openCircuitV: energiser.openCircuitV, internalOhm };
  return {
    energiser,
    internalOhm,
    earth,
    circuit: {
      nodeCount: network.nodes.length,
      spans,
      links,
      faults: [],
      source: sourceThroughEarth(source, earth.ohm ?? 0),
    },
    edgeOfSpan,
    edgeOfLink,
    linkOfSwitch,
  };
}

function spanOf(project: Project, run: Run, ohmPerKmOfOne: number): Span {
  const { from, to, lengthM, liveWires, lineId } = run;
  const growth = project.fenceLine.get(lineId)?.growth ?? propertyOf(project).power.growth;
  return {
    from,
    to,
    lengthM,
    ohmPerKm: ohmPerKmInParallel(ohmPerKmOfOne, liveWires),
    leakageOhmKm: leakageOhmKm(growth, liveWires),
  };
}
