import {
  type Conductor,
  conductorById,
  conductorLibrary,
} from '../../../core/electrical/conductors/conductorLibrary.ts';
import type { Figures } from '../../../core/words/types.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useFigures } from '../../state/useFigures.ts';
import type { Choice } from '../parts/fields.tsx';

/**
 * The conductors to choose from: the library's of this use, then the user's own. `present`, the one that stands there
 * now, is among them whatever it is, so that no field shows another than the file holds.
 */
export function useConductorChoices(use: 'wire' | 'cable', present?: string): readonly Choice<string>[] {
  const { project } = useOpenFile();
  const f = useFigures();
  const own = [...project.conductor.values()];
  const entered = own.flatMap(({ id }) => conductorById(id, own) ?? []);
  const offered = [...conductorLibrary.filter(({ kind }) => kind === use), ...entered];
  const choices = offered.map((each) => choiceOf(each, f));
  if (present === undefined || choices.some(({ value }) => value === present)) return choices;
  const found = conductorById(present, own);
  const { notInFile } = f.words.window.draw.fenceTypes;
  return [found ? choiceOf(found, f) : { value: present, label: notInFile({ id: present }) }, ...choices];
}

function choiceOf({ id, name, ohmPerKm, kind, core }: Conductor, f: Figures): Choice<string> {
  const words = f.words.power.conductors;
  if (kind !== 'cable' || !core) return { value: id, label: words.withOhm({ name: f.say(name), ohmPerKm }) };
  return { value: id, label: words.cableWithOhm({ metal: core.material, diameterMm: core.diameterMm, ohmPerKm }) };
}
