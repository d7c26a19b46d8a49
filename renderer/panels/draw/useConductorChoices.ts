import {
  type Conductor,
  conductorById,
  conductorLibrary,
} from '../../../core/electrical/conductors/conductorLibrary.ts';
import type { UserConductor } from '../../../core/model/things.ts';
import { fixed } from '../../../core/words/numbers/write.ts';
import { capital } from '../../../core/words/text.ts';
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

function choiceOf({ id, name, ohmPerKm, kind }: Omit<Conductor, 'basis'> | UserConductor): Choice<string> {
  const ohm = `${fixed(ohmPerKm, ohmPerKm < 10 ? 1 : 0)} ohm/km`;
  if (kind !== 'cable') return { value: id, label: `${name}, ${ohm}` };
  // What tells them apart comes first: the field is too narrow for the whole.
  const [what, core, rating] = name.split(', ');
  return { value: id, label: `${capital(core!)}, ${ohm}: ${what!.toLowerCase()}, ${rating}` };
}
