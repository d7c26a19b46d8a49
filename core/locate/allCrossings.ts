import type { InGround } from '../model/inGroundThings.ts';
import type { Project } from '../model/project.ts';
import type { Survey } from '../survey/types.ts';
import { type CrossingAsBuilt, crossingAt } from './crossingAsBuilt.ts';
import { leftInGround } from './inGround/leftInGround.ts';

/** The buried crossings of some gateways (all, unless told), by gateway id. Linear in what was measured. */
export function allCrossings(
  project: Project,
  survey: Survey,
  gatewayIds: Iterable<string> = survey.crossings.keys(),
): Map<string, CrossingAsBuilt> {
  const found = new Map<string, CrossingAsBuilt>();
  for (const id of gatewayIds) {
    const crossing = crossingAt(project, survey, id);
    if (crossing) found.set(id, crossing);
  }
  return found;
}

/** A crossing to be found: of a gateway, or one that was left in the ground and is drawn no longer. */
export interface SoughtCrossing {
  readonly crossing: CrossingAsBuilt;
  /** Null while it is drawn. */
  readonly left: InGround | null;
}

/** By the id of a gateway, or of something left in the ground; null where that is no buried crossing. */
export function crossingById(project: Project, survey: Survey, id: string): SoughtCrossing | null {
  const left = project.inGround.has(id) ? leftInGround(project, survey).find(({ thing }) => thing.id === id) : null;
  if (left) return left.crossing && { crossing: left.crossing, left: left.thing };
  const crossing = crossingAt(project, survey, id);
  return crossing && { crossing, left: null };
}
