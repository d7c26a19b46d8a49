import { newCrossing } from '../defaults.ts';
import { propertyOf, put } from '../project.ts';
import type { Crossing } from '../things.ts';
import { deleteThings } from './deleteThings.ts';
import { whyNotAtMost, whyNotFields } from './support/checkFields.ts';
import { type Edit, firstRefusal, guarded, type NewId, type WhyNot } from './support/edit.ts';
import { crossingOf, found, whyNotFound } from './support/find.ts';

export interface SetCrossing {
  readonly gatewayId: string;
  /** What to change; a gateway without a crossing gets one first. `null` takes the crossing away, with what was recorded of it. */
  readonly to: Partial<Omit<Crossing, 'kind' | 'id' | 'gatewayId'>> | null;
}

/** Adds, changes or takes away the crossing of a gateway. */
export function setCrossing(wanted: SetCrossing, newId: NewId): Edit {
  return guarded(whyNotSetCrossing(wanted), (project) => {
    const gateway = found(project, 'gateway', wanted.gatewayId);
    const crossing = crossingOf(project, gateway.id);
    if (wanted.to === null) return crossing ? deleteThings([crossing])(project) : project;
    const base = crossing ?? newCrossing(newId('crossing'), gateway, propertyOf(project).crossings);
    return put(project, { ...base, ...wanted.to });
  });
}

/** `notFound`, `notValid`, `tooLarge`. */
export function whyNotSetCrossing({ gatewayId, to }: SetCrossing): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'gateway', gatewayId),
      () => (to ? whyNotFields(project, 'crossing', null, to) : null),
      () => {
        const gateway = found(project, 'gateway', gatewayId);
        const base = crossingOf(project, gatewayId) ?? newCrossing('', gateway, propertyOf(project).crossings);
        return to ? whyNotAtMost(project, { ...base, ...to }, to) : null;
      },
    );
}
