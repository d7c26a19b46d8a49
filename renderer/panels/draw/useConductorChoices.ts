import { conductorLibrary } from '../../../core/electrical/conductors/conductorLibrary.ts';
import { useOpenFile } from '../../state/appState.ts';
import type { Choice } from '../parts/fields.tsx';

/** The conductors to choose from: the library's of this use, then the user's own. */
export function useConductorChoices(use: 'wire' | 'cable'): readonly Choice<string>[] {
  const { project } = useOpenFile();
  return [...conductorLibrary.filter(({ kind }) => kind === use), ...project.conductor.values()].map(
    ({ id, name, ohmPerKm }) => ({ value: id, label: `${name}, ${ohmPerKm.toFixed(ohmPerKm < 10 ? 1 : 0)} ohm/km` }),
  );
}
