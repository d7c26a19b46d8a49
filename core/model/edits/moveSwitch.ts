import { put } from '../project.ts';
import type { SwitchPlace } from '../things.ts';
import { type Edit, firstRefusal, guarded, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { whyNotSwitchPlace } from './support/switchPlace.ts';

export interface MoveSwitch {
  readonly switchId: string;
  readonly place: SwitchPlace;
}

/** Moves a switch to another place and pins it there. */
export function moveSwitch(wanted: MoveSwitch): Edit {
  return guarded(whyNotMoveSwitch(wanted), (project) => {
    return put(project, { ...found(project, 'switch', wanted.switchId), place: wanted.place, pinned: true });
  });
}

/** `notFound`, and what `whyNotSwitchPlace` refuses. */
export function whyNotMoveSwitch({ switchId, place }: MoveSwitch): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'switch', switchId),
      () => whyNotSwitchPlace(project, place, switchId),
    );
}
