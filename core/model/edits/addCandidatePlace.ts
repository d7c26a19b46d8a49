import { put } from '../project.ts';
import { whyNotFields } from './support/checkFields.ts';
import { type Edit, firstRefusal, guarded, type NewId, type WhyNot } from './support/edit.ts';
import { whyNotFound } from './support/find.ts';
import { whyNotStation } from './support/switchPlace.ts';

export interface AddCandidatePlace {
  readonly lineId: string;
  readonly atM: number;
  /** Relative to a switch at a gateway; null takes the cost along a run. */
  readonly cost: number | null;
}

/** Adds a place where a switch could go to those that the plan chooses from. */
export function addCandidatePlace(wanted: AddCandidatePlace, newId: NewId): Edit {
  return guarded(whyNotAddCandidatePlace(wanted), (project) => {
    return put(project, { kind: 'switchCandidate', id: newId('switchCandidate'), ...wanted });
  });
}

/** `notFound`, `offLine`, `insideGateway`, `notValid`. */
export function whyNotAddCandidatePlace({ lineId, atM, cost }: AddCandidatePlace): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'fenceLine', lineId),
      () => whyNotFields(project, 'switchCandidate', null, { cost }),
      () => whyNotStation(project, lineId, atM),
    );
}
