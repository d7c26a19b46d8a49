import type { FaultHunt } from '../../../core/model/huntThings.ts';
import { put } from '../../../core/model/project.ts';
import { commit } from '../../state/session.ts';

/** Puts the hunt as it now stands in the file. */
export function keepHunt(label: string, hunt: FaultHunt): void {
  void commit(label, (project) => put(project, hunt));
}
