import type { Project } from '../../model/project.ts';
import type { Crossing } from '../../model/things.ts';

/**
 * The crossings that lie in the ground, by id; with `gatewayIds` only those of these gateways. A buried crossing lies in
 * the ground when it counts as built, or when a point of it was recorded although it counts as planned.
 */
export function crossingsInGround(
  project: Project,
  gatewayIds: ReadonlySet<string> | null = null,
): Map<string, Crossing> {
  const recorded = new Set<string>();
  for (const { crossingId } of project.crossingRecord.values()) recorded.add(crossingId);
  for (const { crossingId } of project.buriedPoint.values()) recorded.add(crossingId);
  const found = new Map<string, Crossing>();
  for (const crossing of project.crossing.values()) {
    if (crossing.method !== 'buried' || (gatewayIds && !gatewayIds.has(crossing.gatewayId))) continue;
    if (crossing.status === 'built' || recorded.has(crossing.id)) found.set(crossing.id, crossing);
  }
  return found;
}
