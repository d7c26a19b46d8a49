import { newFenceLine } from '../defaults.ts';
import { nextName } from '../names.ts';
import { put } from '../project.ts';
import type { LonLat, Status } from '../things.ts';
import { type Edit, firstRefusal, guarded, type NewId, type WhyNot } from './support/edit.ts';
import { whyNotFound } from './support/find.ts';
import { withoutDoubles } from './support/path.ts';
import { whyNotPath } from './support/whyNotPath.ts';

export interface AddFenceLine {
  readonly path: readonly LonLat[];
  readonly typeId: string;
  readonly live?: boolean;
  readonly status?: Status;
  /** Without one it gets the next free name. */
  readonly name?: string;
}

/** Draws a fence line. A vertex that merely doubles the one before it is left out. */
export function addFenceLine(wanted: AddFenceLine, newId: NewId): Edit {
  return guarded(whyNotAddFenceLine(wanted), (project) => {
    const { path, typeId, live = true, status = 'planned', name = nextName(project, 'fenceLine') } = wanted;
    const id = newId('fenceLine');
    return put(project, newFenceLine({ id, name, typeId, live, status, path: withoutDoubles(project, path) }));
  });
}

/** `outOfRange`, `tooFar`, `tooFewPoints`, `noLength`, `notFound` (the fence type). */
export function whyNotAddFenceLine({ path, typeId }: AddFenceLine): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'fenceType', typeId),
      () => whyNotPath(project, path, 'fenceLine'),
    );
}
