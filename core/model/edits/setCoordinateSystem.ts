import { put } from '../project.ts';
import type { CoordinateSettings } from '../underlayThings.ts';
import { whyNotFields } from './support/checkFields.ts';
import { type Edit, guarded, type WhyNot } from './support/edit.ts';

export type SetCoordinateSystem = Pick<CoordinateSettings, 'system' | 'own'>;

/** Says how coordinates are shown and typed. Nothing moves. */
export function setCoordinateSystem({ system, own }: SetCoordinateSystem): Edit {
  return guarded(whyNotSetCoordinateSystem({ system, own }), (project) =>
    put(project, { kind: 'coordinateSettings', id: 'coordinates', system, own }),
  );
}

/** `notValid`. */
function whyNotSetCoordinateSystem(wanted: SetCoordinateSystem): WhyNot {
  return (project) => whyNotFields(project, 'coordinateSettings', 'coordinates', wanted);
}
