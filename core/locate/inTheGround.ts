import type { Project } from '../model/project.ts';
import type { BuriedPoint, CrossingRecord } from '../model/recordThings.ts';
import type { Crossing, EarthField, LeadOut } from '../model/things.ts';
import { pointsOf, recordOf } from './crossingSource.ts';

/** What is buried, or will be. */
export type Buriable = Crossing | LeadOut | EarthField;

/**
 * Whether something lies in the ground as far as the file knows. What is planned does not, unless something of it was
 * recorded: then somebody dug there, whatever its state says.
 */
export function isInTheGround(project: Project, thing: Buriable): boolean {
  switch (thing.kind) {
    case 'crossing':
      return isCrossingInTheGround(thing, recordOf(project, thing.id), pointsOf(project, thing.id));
    case 'leadOut':
      return thing.buried && thing.status === 'built';
    case 'earthField':
      return thing.status === 'built';
  }
}

/** The same of a crossing and what was recorded of it. */
export function isCrossingInTheGround(
  { method, status }: Pick<Crossing, 'method' | 'status'>,
  record: CrossingRecord | null,
  points: readonly BuriedPoint[],
): boolean {
  return method === 'buried' && (status === 'built' || record !== null || points.length > 0);
}
