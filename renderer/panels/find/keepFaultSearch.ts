import { keepFaultSearch as keep } from '../../../core/locate/faultSearch/keepFaultSearch.ts';
import type { FaultSearch } from '../../../core/model/faultSearchThings.ts';
import { commit } from '../../state/session.ts';

/** Puts the search as it now stands in the file. */
export function keepFaultSearch(label: string, search: FaultSearch): void {
  void commit(label, keep(search));
}
