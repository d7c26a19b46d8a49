import { whyNotFields } from '../../model/edits/support/checkFields.ts';
import { type Edit, firstRefusal, guarded, type WhyNot } from '../../model/edits/support/edit.ts';
import { whyNotFound } from '../../model/edits/support/find.ts';
import type { FaultHunt } from '../../model/huntThings.ts';
import { put } from '../../model/project.ts';

/** Goes on with a search for a fault: keeps it as it now stands. */
export function keepHunt(hunt: FaultHunt): Edit {
  return guarded(whyNotKeepHunt(hunt), (project) => put(project, hunt));
}

/** `notFound`, `notValid`. Its energiser and switches may be gone: a search says what once was. */
function whyNotKeepHunt({ kind, id, energiserId: _, ...values }: FaultHunt): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, kind, id),
      () => whyNotFields(project, kind, id, values),
    );
}
