import { buildable } from '../kinds/builtMark.ts';
import { newThing } from '../kinds/describe.ts';
import { buriedPoint, crossingRecord } from '../kinds/trench.ts';
import type { BuildableKind, BuriedPoint, BuriedRole, CrossingRecord } from './recordThings.ts';

/** What can be planned and then built, in the order in which it is listed. */
export const buildableKinds: readonly BuildableKind[] = buildable.map(({ kind }) => kind);

/** A tape over rough ground to a mark on a post; common practice, no source. */
export const usualTapeSeM = 0.02;

/** The id of a crossing's one record. */
export function crossingRecordId(crossingId: string): string {
  return `record:${crossingId}`;
}

/** The id of a built thing's one mark. */
export function builtMarkId(kind: BuildableKind, id: string): string {
  return `built:${kind}:${id}`;
}

/** The id of the one place in a stage that a thing has. */
export function stageMarkId(thingId: string): string {
  return `in:${thingId}`;
}

/** A record of which nothing is written down yet. */
export function newCrossingRecord(crossingId: string): CrossingRecord {
  return newThing(crossingRecord, { id: crossingRecordId(crossingId), crossingId });
}

/** A buried point of which nothing is measured yet. */
export function newBuriedPoint(id: string, crossingId: string, role: BuriedRole, rank = 0): BuriedPoint {
  return newThing(buriedPoint, { id, crossingId, role, rank });
}
