import { deleteThings } from '../../core/model/edits/deleteThings.ts';
import { useApp } from './appState.ts';
import { findThing } from './findThing.ts';
import { commit } from './session.ts';
import { figuresOf } from './useFigures.ts';

/** Deletes what is chosen, with all that hangs on it; one step of undo. */
export async function deleteChosen(): Promise<void> {
  const { chosen, file } = useApp.getState();
  if (!file) return;
  const things = chosen.flatMap((id) => findThing(file.project, id) ?? []);
  const [first] = things;
  if (!first) return;
  const f = figuresOf(file.project);
  const { steps } = f.words.window.frame.fields;
  const name = 'name' in first ? first.name : f.kind(first.kind);
  const label = things.length === 1 ? steps.delete({ name }) : steps.deleteSeveral({ count: things.length });
  await commit(label, deleteThings(things), { choose: [], deleting: true });
}
