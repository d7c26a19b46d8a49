import { withDependants } from '../model/edits/deleteThings.ts';
import { type Project, removeAll } from '../model/project.ts';
import { buildableKinds } from '../model/recordDefaults.ts';
import type { BuildableThing } from '../model/recordThings.ts';

/** The property with only what is really there: what is planned is left out, with all that hangs on it. */
export function builtOnly(project: Project): Project {
  const planned = buildableKinds.flatMap((kind) =>
    [...(project[kind].values() as Iterable<BuildableThing>)].filter(({ status }) => status === 'planned'),
  );
  return removeAll(project, withDependants(project, planned));
}
