import { leastOf } from '../../model/extremes.ts';
import type { Project } from '../../model/project.ts';
import type { Stage } from '../../model/things.ts';
import { quantityOf } from '../takeOff/tally.ts';
import type { Quantity } from '../types.ts';

/** The stages in the order in which they are done. */
export function stagesOf(project: Project): Stage[] {
  return [...project.stage.values()].sort((a, b) => a.rank - b.rank || (a.id < b.id ? -1 : 1));
}

/**
 * The stage of each thing that has one: its own mark, or that of what it hangs on (a gateway on its fence line, a
 * switch on its gateway or line, a lead-out and earth on their energiser).
 */
export function stageOfThing(project: Project): (thingId: string) => Stage | null {
  const marks = new Map(
    [...project.stageMark.values()].map(({ thingId, stageId }) => [thingId, project.stage.get(stageId) ?? null]),
  );
  const stageOf = (thingId: string): Stage | null => {
    const own = marks.get(thingId);
    if (own) return own;
    const holder = holderOf(project, thingId);
    return holder === null ? null : stageOf(holder);
  };
  return stageOf;
}

function holderOf(project: Project, thingId: string): string | null {
  const cutOut = project.switch.get(thingId);
  if (cutOut) {
    const { place } = cutOut;
    return place.on === 'gateway' ? place.gatewayId : place.on === 'leadOut' ? place.leadOutId : place.lineId;
  }
  return (
    project.gateway.get(thingId)?.lineId ??
    project.leadOut.get(thingId)?.energiserId ??
    project.earthField.get(thingId)?.energiserId ??
    null
  );
}

export interface StagePart {
  /** Null: in no stage. */
  readonly stage: Stage | null;
  readonly quantities: readonly Quantity[];
}

/**
 * Quantities told out to the stages, in order, and last what is in none. A piece that several things need is put in by
 * the first of them. Without stages there is one part with everything.
 */
export function quantitiesByStage(project: Project, quantities: readonly Quantity[]): StagePart[] {
  const stages = stagesOf(project);
  if (stages.length === 0) return [{ stage: null, quantities }];
  const stageOf = stageOfThing(project);
  const rankOf = (thingIds: readonly string[]) =>
    leastOf(
      thingIds.map((id) => {
        const stage = stageOf(id);
        return stage ? stages.indexOf(stage) : stages.length;
      }),
    );
  const parts = [...stages, null].map((stage, rank) => ({
    stage,
    quantities: quantities.flatMap((quantity) => {
      const pieces = quantity.pieces.filter(({ thingIds }) => rankOf(thingIds) === rank);
      return pieces.length > 0 ? [quantityOf(quantity, pieces)] : [];
    }),
  }));
  return parts.filter(({ stage, quantities: own }) => stage !== null || own.length > 0);
}
