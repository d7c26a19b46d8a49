import { plainWords } from '../../core/words/figures.ts';
import { useApp } from './appState.ts';
import { report } from './report.ts';
import { createFile, host, openFile, saveCopy } from './session.ts';

export type FilePurpose = 'open' | 'new' | 'copy';

/** Asks for a file with the system's own dialog where there is one, else with the window's, and does what it is for. */
export async function chooseFile(purpose: FilePurpose): Promise<void> {
  const { desktop } = host();
  const suggestedName = `${useApp.getState().file?.fileName ?? plainWords().window.frame.dialogs.files.newName}.undergate`;
  const answer = purpose === 'open' ? await desktop.chooseOpenPath() : await desktop.chooseSavePath({ suggestedName });
  if (answer.ok) {
    if (answer.value !== null) await actOnFile(purpose, answer.value);
  } else if (answer.problem.code === 'not-available') {
    useApp.setState({ dialog: { kind: 'chooseFile', purpose } });
  } else {
    report(answer.problem);
  }
}

/** Opens, makes or copies to `path`; resolves to whether it worked. */
export function actOnFile(purpose: FilePurpose, path: string, replace = false): Promise<boolean> {
  if (purpose === 'open') return openFile(path);
  if (purpose === 'copy') return saveCopy(path, replace);
  return createFile(path, nameFromPath(path));
}

/** "Upper block" from ".../Upper block.undergate". */
function nameFromPath(path: string): string {
  return (
    (path.split(/[\\/]/).pop() ?? '').replace(/\.undergate$/i, '') || plainWords().window.frame.dialogs.files.newName
  );
}
