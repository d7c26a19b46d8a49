import { nextName } from '../names.ts';
import { put } from '../project.ts';
import type { CutOutSwitch } from '../things.ts';
import { whyNotFields } from './support/checkFields.ts';
import { type Edit, firstRefusal, guarded, type NewId, type WhyNot } from './support/edit.ts';
import { whyNotSwitchPlace } from './support/switchPlace.ts';

export type PlaceSwitch = Pick<CutOutSwitch, 'place'> & Partial<Omit<CutOutSwitch, 'kind' | 'id'>>;

/** Places a cut-out switch. It starts out normally closed, and pinned: the plan keeps what a person put there. */
export function placeSwitch(wanted: PlaceSwitch, newId: NewId): Edit {
  return guarded(whyNotPlaceSwitch(wanted), (project) => {
    const name = wanted.name ?? nextName(project, 'switch');
    const cutOut: CutOutSwitch = {
      kind: 'switch',
      id: newId('switch'),
      normally: 'closed',
      pinned: true,
      status: 'planned',
      note: '',
      ...wanted,
      name,
    };
    return put(project, cutOut);
  });
}

/** `notValid`, `nameTaken`, and what `whyNotSwitchPlace` refuses. */
export function whyNotPlaceSwitch(wanted: PlaceSwitch): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFields(project, 'switch', null, wanted),
      () => whyNotSwitchPlace(project, wanted.place),
    );
}
