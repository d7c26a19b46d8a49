import { newCrossing, newGateway } from '../defaults.ts';
import { nextName } from '../names.ts';
import { propertyOf, put } from '../project.ts';
import type { Gateway } from '../things.ts';
import { whyNotFields } from './support/checkFields.ts';
import { type Edit, firstRefusal, guarded, type NewId, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { whyNotOpening } from './support/openings.ts';

/** What is not given is taken from the defaults; a name, from the next free one. */
export type PlaceGateway = Pick<Gateway, 'lineId' | 'atM'> & Partial<Omit<Gateway, 'kind' | 'id'>>;

/** Opens a gateway in a fence line. In a live line it comes with its crossing. */
export function placeGateway(wanted: PlaceGateway, newId: NewId): Edit {
  return guarded(whyNotPlaceGateway(wanted), (project) => {
    const line = found(project, 'fenceLine', wanted.lineId);
    const name = wanted.name ?? nextName(project, 'gateway');
    const gateway = newGateway({ ...wanted, id: newId('gateway'), name });
    if (!line.live) return put(project, gateway);
    return put(project, gateway, newCrossing(newId('crossing'), gateway, propertyOf(project).crossings));
  });
}

/** `notFound`, `notValid`, `nameTaken`, and what `whyNotOpening` refuses. */
export function whyNotPlaceGateway(wanted: PlaceGateway): WhyNot {
  return (project) => {
    const { atM, widthM } = newGateway({ id: '', name: '', ...wanted });
    return firstRefusal(
      () => whyNotFound(project, 'fenceLine', wanted.lineId),
      () => whyNotFields(project, 'gateway', null, wanted),
      () => whyNotOpening(project, found(project, 'fenceLine', wanted.lineId), { atM, widthM }),
    );
  };
}
