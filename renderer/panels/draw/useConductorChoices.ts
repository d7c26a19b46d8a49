import {
  type Conductor,
  conductorById,
  conductorLibrary,
} from '../../../core/electrical/conductors/conductorLibrary.ts';
import { useOpenFile } from '../../state/appState.ts';
import type { Choice } from '../parts/fields.tsx';

/**
 * The conductors to choose from: the library's of this use, then the user's own. `present`, the one that stands there
 * now, is among them whatever it is, so that no field shows another than the file holds.
 */
export function useConductorChoices(use: 'wire' | 'cable', present?: string): readonly Choice<string>[] {
  const { project } = useOpenFile();
  const own = [...project.conductor.values()];
  const choices = [...conductorLibrary.filter(({ kind }) => kind === use), ...own].map(choiceOf);
  if (present === undefined || choices.some(({ value }) => value === present)) return choices;
  const found = conductorById(present, own);
  return [found ? choiceOf(found) : { value: present, label: `Not in this file: ${present}` }, ...choices];
}

function choiceOf({ id, name, ohmPerKm }: Pick<Conductor, 'id' | 'name' | 'ohmPerKm'>): Choice<string> {
  return { value: id, label: `${name}, ${ohmPerKm.toFixed(ohmPerKm < 10 ? 1 : 0)} ohm/km` };
}
