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
  if (method !== 'buried') return false;
  return (
    status === 'built' || (record !== null && !saysNothing(record)) || points.some((point) => !isUnmeasured(point))
  );
}

/** What was written into it was taken out again; how the trench is to be drawn says nothing of it. */
function saysNothing(record: CrossingRecord): boolean {
  const { kind: _, id: __, route: ___, risers, depths, ...rest } = { ...record, crossingId: null };
  const isBlank = (value: unknown) => value === null || value === undefined || value === '';
  return depths.length === 0 && [...Object.values(rest), ...Object.values(risers)].every(isBlank);
}

/** A point of which nothing was measured yet, or nothing any more. */
export function isUnmeasured({ ties, offset, gps }: BuriedPoint): boolean {
  return ties.length === 0 && offset === null && gps === null;
}
