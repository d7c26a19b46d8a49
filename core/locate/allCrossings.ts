import type { Project } from '../model/project.ts';
import type { Survey } from '../survey/types.ts';
import { type CrossingAsBuilt, crossingAt } from './crossingAsBuilt.ts';

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
