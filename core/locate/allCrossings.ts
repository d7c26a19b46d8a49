import type { Project } from '../model/project.ts';
import type { BuriedPoint } from '../model/recordThings.ts';
import type { Survey } from '../registers/types.ts';
import { type CrossingAsBuilt, crossingAsBuilt } from './crossingAsBuilt.ts';

/** The buried crossings of some gateways (all, unless told), by gateway id. Linear in what was measured. */
export function allCrossings(
  project: Project,
  survey: Survey,
  gatewayIds: Iterable<string> = survey.crossings.keys(),
): Map<string, CrossingAsBuilt> {
  const pointsOf = new Map<string, Map<string, BuriedPoint>>();
  for (const point of project.buriedPoint.values()) {
    const own = pointsOf.get(point.crossingId) ?? new Map<string, BuriedPoint>();
    pointsOf.set(point.crossingId, own.set(point.id, point));
  }
  const none = new Map<string, BuriedPoint>();
  const found = new Map<string, CrossingAsBuilt>();
  for (const id of gatewayIds) {
    const buriedPoint = pointsOf.get(survey.crossings.get(id)?.crossing.id ?? '') ?? none;
    const crossing = crossingAsBuilt({ ...project, buriedPoint }, survey, id);
    if (crossing) found.set(id, crossing);
  }
  return found;
}
