import { whyNotFields } from '../../model/edits/support/checkFields.ts';
import { type Edit, firstRefusal, guarded, type WhyNot } from '../../model/edits/support/edit.ts';
import { whyNotFound } from '../../model/edits/support/find.ts';
import type { FaultSearch } from '../../model/faultSearchThings.ts';
import { put } from '../../model/project.ts';

/** Goes on with a search for a fault: keeps it as it now stands. */
export function keepFaultSearch(search: FaultSearch): Edit {
  return guarded(whyNotKeepFaultSearch(search), (project) => put(project, search));
}

/** `notFound`, `notValid`. Its energiser and switches may be gone: a search says what once was. */
function whyNotKeepFaultSearch({ kind, id, energiserId: _, ...values }: FaultSearch): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, kind, id),
      () => whyNotFields(project, kind, id, values),
    );
}
