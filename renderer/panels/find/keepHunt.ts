import { keepHunt as keep } from '../../../core/locate/hunt/keepHunt.ts';
import type { FaultHunt } from '../../../core/model/huntThings.ts';
import { commit } from '../../state/session.ts';

/** Puts the hunt as it now stands in the file. */
export function keepHunt(label: string, hunt: FaultHunt): void {
  void commit(label, keep(hunt));
}
