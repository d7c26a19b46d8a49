import {
  type Conductor,
  conductorById,
  conductorLibrary,
} from '../../../core/electrical/conductors/conductorLibrary.ts';
import type { UserConductor } from '../../../core/model/things.ts';
import type { Texts } from '../../../core/words/message.ts';
import { fixed } from '../../../core/words/numbers/write.ts';
import { capital } from '../../../core/words/text.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useWords } from '../../state/useFigures.ts';
import type { Choice } from '../parts/fields.tsx';

/**
 * The conductors to choose from: the library's of this use, then the user's own. `present`, the one that stands there
 * now, is among them whatever it is, so that no field shows another than the file holds.
 */
export function useConductorChoices(use: 'wire' | 'cable', present?: string): readonly Choice<string>[] {
  const { project } = useOpenFile();
  const words = useWords().window.draw.fenceTypes;
  const own = [...project.conductor.values()];
  const choices = [...conductorLibrary.filter(({ kind }) => kind === use), ...own].map((each) => choiceOf(each, words));
  if (present === undefined || choices.some(({ value }) => value === present)) return choices;
  const found = conductorById(present, own);
  return [found ? choiceOf(found, words) : { value: present, label: words.notInFile({ id: present }) }, ...choices];
}

function choiceOf(
  { id, name, ohmPerKm, kind }: Omit<Conductor, 'basis'> | UserConductor,
  words: Texts['window']['draw']['fenceTypes'],
): Choice<string> {
  const ohm = fixed(ohmPerKm, ohmPerKm < 10 ? 1 : 0);
  if (kind !== 'cable') return { value: id, label: words.wire({ name, ohmPerKm: ohm }) };
  const [what, core, rating] = name.split(', ');
  const parts = { core: capital(core!), what: what!.toLowerCase(), rating: rating! };
  return { value: id, label: words.cable({ ...parts, ohmPerKm: ohm }) };
}
