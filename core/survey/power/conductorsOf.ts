import { type Conductor, conductorById } from '../../electrical/conductors/conductorLibrary.ts';
import type { Project } from '../../model/project.ts';
import type { CrossingEdge, LeadOutEdge, NetworkEdge, Run } from '../../network/types.ts';
import { unknownConductor } from './problems.ts';
import type { PowerProblem } from './types.ts';

/** Looks up what network edges are made of, and gathers what can't be found. */
export class EdgeConductors {
  readonly #project: Project;
  readonly #own;
  readonly #found = new Map<string, Conductor | null>();

  constructor(project: Project) {
    this.#project = project;
    this.#own = [...project.conductor.values()];
  }

  /** Ohm per km of one wire of a run, or of a cable; null where it is not known. */
  ohmPerKm(edge: Run | CrossingEdge | LeadOutEdge): number | null {
    const id = this.#conductorId(edge);
    if (id === undefined) return null;
    let conductor = this.#found.get(id);
    if (conductor === undefined) {
      conductor = conductorById(id, this.#own) ?? null;
      this.#found.set(id, conductor);
    }
    return conductor?.ohmPerKm ?? null;
  }

  /** What among these edges has no known conductor: one problem for each fence type, crossing and lead-out. */
  problems(edges: readonly NetworkEdge[]): PowerProblem[] {
    const linesOfType = new Map<string, Set<string>>();
    const problems: PowerProblem[] = [];
    for (const edge of edges) {
      if (edge.kind === 'switch' || this.ohmPerKm(edge) !== null) continue;
      if (edge.kind === 'run') {
        const typeId = this.#project.fenceLine.get(edge.lineId)?.typeId ?? '';
        linesOfType.set(typeId, (linesOfType.get(typeId) ?? new Set()).add(edge.lineId));
      } else if (edge.kind === 'crossing') {
        const name = this.#project.gateway.get(edge.gatewayId)?.name ?? edge.gatewayId;
        problems.push(unknownConductor({ on: 'crossing', name }, [edge.gatewayId]));
      } else {
        const name = this.#project.leadOut.get(edge.leadOutId)?.name ?? edge.leadOutId;
        problems.push(unknownConductor({ on: 'leadOut', name }, [edge.leadOutId]));
      }
    }
    for (const [typeId, lineIds] of linesOfType) {
      const type = this.#project.fenceType.get(typeId);
      const lines = [...lineIds].map((id) => this.#project.fenceLine.get(id)?.name ?? id);
      const of = { on: 'fence', type: type?.name ?? null, lines } as const;
      problems.push(unknownConductor(of, type ? [typeId] : [...lineIds]));
    }
    return problems;
  }

  #conductorId(edge: Run | CrossingEdge | LeadOutEdge): string | undefined {
    const { fenceLine, fenceType, crossing, leadOut } = this.#project;
    if (edge.kind === 'run') return fenceType.get(fenceLine.get(edge.lineId)?.typeId ?? '')?.wireId;
    if (edge.kind === 'crossing') return crossing.get(edge.crossingId)?.cableId;
    return leadOut.get(edge.leadOutId)?.cableId;
  }
}
