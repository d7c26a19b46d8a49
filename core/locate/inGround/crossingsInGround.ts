import type { Project } from '../../model/project.ts';
import type { Crossing } from '../../model/things.ts';
import { isInTheGround } from '../inTheGround.ts';

/** The crossings that lie in the ground, by id; with `gatewayIds` only those of these gateways. */
export function crossingsInGround(
  project: Project,
  gatewayIds: ReadonlySet<string> | null = null,
): Map<string, Crossing> {
  const found = new Map<string, Crossing>();
  if (gatewayIds?.size === 0) return found;
  for (const crossing of project.crossing.values()) {
    if (gatewayIds && !gatewayIds.has(crossing.gatewayId)) continue;
    if (isInTheGround(project, crossing)) found.set(crossing.id, crossing);
  }
  return found;
}
