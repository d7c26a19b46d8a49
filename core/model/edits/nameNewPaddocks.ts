import { nextName } from '../names.ts';
import { put } from '../project.ts';
import type { LonLat, PaddockName } from '../things.ts';
import type { Edit, NewId } from './support/edit.ts';

/** Gives each of these places (a point inside each paddock that has no name yet) the next free paddock name. */
export function nameNewPaddocks(places: readonly LonLat[], newId: NewId): Edit {
  return (project) =>
    places.reduce((now, at) => {
      const name: PaddockName = { kind: 'paddock', id: newId('paddock'), name: nextName(now, 'paddock'), at, note: '' };
      return put(now, name);
    }, project);
}
