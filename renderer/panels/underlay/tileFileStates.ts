import { create } from 'zustand';
import type { TileFileFacts } from '../../../core/api/pictureApi.ts';
import type { Problem, Result } from '../../../core/api/result.ts';
import type { Underlay } from '../../../core/model/underlayThings.ts';
import { plainWords } from '../../../core/words/figures.ts';
import { useApp } from '../../state/appState.ts';
import { host } from '../../state/session.ts';

/** What is known of a map file that the open property names. */
export type TileFileState =
  | { readonly is: 'opening' }
  | { readonly is: 'open' }
  /** Not shown: why, and what to do about it. With the code `ask-first` it has not been opened. */
  | { readonly is: 'left-out'; readonly problem: Problem };

/** By path; of a file that nothing has been asked of yet there is nothing. */
export const useTileFiles = create<ReadonlyMap<string, TileFileState>>(() => new Map());

/** Grows with each property that is opened, so that answers about the one before are passed over. */
let turn = 0;

/** Another property is shown, or none. */
export function forgetTileFiles(): void {
  turn += 1;
  useTileFiles.setState(new Map(), true);
}

/** Has the host look into the files of all maps that are shown; it opens those that need no asking. */
export function openShownTileFiles(underlays: Iterable<Underlay>): void {
  for (const { source, shown } of underlays) {
    if (source.from !== 'tileFile' || !shown || useTileFiles.getState().has(source.path)) continue;
    void open(source.path, false).then((opened) => {
      if (!opened.ok) tell(opened.problem);
    });
  }
}

/** Opens a file that the user chose here and now. */
export function openChosenTileFile(path: string): Promise<Result<TileFileFacts>> {
  return open(path, true);
}

/** A file that was open does not give its tiles any more. */
export function leaveOut(path: string, problem: Problem): void {
  if (useTileFiles.getState().get(path)?.is !== 'open') return;
  set(path, { is: 'left-out', problem });
  tell(problem);
}

async function open(path: string, chosen: boolean): Promise<Result<TileFileFacts>> {
  const asked = turn;
  set(path, { is: 'opening' });
  const opened = await host().project.openTileFile({ path, chosen });
  if (asked === turn) set(path, opened.ok ? { is: 'open' } : { is: 'left-out', problem: opened.problem });
  return opened;
}

function set(path: string, state: TileFileState): void {
  useTileFiles.setState(new Map(useTileFiles.getState()).set(path, state), true);
}

/** On the last line of the inspector, where it stops nobody. */
function tell({ code }: Problem): void {
  if (code === 'stopped' || code === 'no-file-open') return;
  const count = [...useTileFiles.getState().values()].filter(({ is }) => is === 'left-out').length;
  useApp.setState({ lastLine: { kind: 'refused', text: plainWords().window.background.notShown({ count }) } });
}
