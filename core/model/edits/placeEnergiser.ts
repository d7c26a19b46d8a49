import { newEnergiser } from '../defaults.ts';
import { nextName } from '../names.ts';
import { type Project, put } from '../project.ts';
import type { Energiser } from '../things.ts';
import { whyNotWhole } from './changeThing.ts';
import { whyNotFields } from './support/checkFields.ts';
import { type Edit, firstRefusal, guarded, type NewId, type WhyNot } from './support/edit.ts';
import { whyNotPoint } from './support/whyNotPath.ts';

export type PlaceEnergiser = Pick<Energiser, 'at'> & Partial<Omit<Energiser, 'kind' | 'id'>>;

/** Places an energiser. One that stands within the snap tolerance of a live wire feeds it; else it needs a lead-out. */
export function placeEnergiser(wanted: PlaceEnergiser, newId: NewId): Edit {
  return guarded(whyNotPlaceEnergiser(wanted), (project) =>
    put(project, energiserOf(project, wanted, newId('energiser'))),
  );
}

/** `outOfRange`, `tooFar`, `notValid`, `nameTaken`, `voltageOrder`. */
export function whyNotPlaceEnergiser(wanted: PlaceEnergiser): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotPoint(project, wanted.at),
      () => whyNotFields(project, 'energiser', null, wanted),
      () => whyNotWhole(energiserOf(project, wanted, '')),
    );
}

function energiserOf(project: Project, wanted: PlaceEnergiser, id: string): Energiser {
  const name = nextName(project, 'energiser');
  return { ...newEnergiser(id, name, wanted.at), ...wanted };
}
