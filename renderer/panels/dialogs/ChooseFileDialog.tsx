import { useEffect, useState } from 'react';
import type { FolderListing } from '../../../core/api/projectApi.ts';
import type { Problem } from '../../../core/api/result.ts';
import type { Texts } from '../../../core/words/message.ts';
import { useApp } from '../../state/appState.ts';
import { actOnFile, type FilePurpose } from '../../state/chooseFile.ts';
import { host } from '../../state/session.ts';
import { useWords } from '../../state/useFigures.ts';
import { closeDialog, DialogFrame } from './DialogFrame.tsx';
import { FolderList, joinPath } from './FolderList.tsx';

/** Choosing a project file where the system's own dialog is not to be had. */
export function ChooseFileDialog({ purpose }: { readonly purpose: FilePurpose }) {
  const { files: words } = useWords().window.frame.dialogs;
  const fileName = useApp((state) => state.file?.fileName);
  /** The folder asked for; null: the user's project folder. */
  const [folder, setFolder] = useState<string | null>(null);
  const [listing, setListing] = useState<FolderListing | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [name, setName] = useState(
    purpose === 'new' ? words.newName : purpose === 'copy' ? words.copyName({ file: fileName ?? '' }) : '',
  );
  const [replace, setReplace] = useState(false);
  const [busy, setBusy] = useState(false);

  useEffect(() => {
    let left = false;
    void host()
      .project.listFolder({ path: folder })
      .then((result) => {
        if (left) return;
        if (result.ok) setListing(result.value);
        setProblem(result.ok ? null : result.problem);
      });
    return () => {
      left = true;
    };
  }, [folder]);

  const trimmed = name.trim().replace(/\.undergate$/i, '');
  const exists = listing?.projects.some(
    (project) => project.name.toLowerCase() === `${trimmed}.undergate`.toLowerCase(),
  );
  const whyNot = whyNotName(trimmed, purpose, exists === true, replace, words);
  const act = async (chosenName: string) => {
    if (!listing) return;
    setBusy(true);
    const done = await actOnFile(purpose, joinPath(listing.path, `${chosenName}.undergate`), replace);
    setBusy(false);
    if (done) closeDialog();
    else {
      setProblem(useApp.getState().problem);
      useApp.setState({ problem: null });
    }
  };
  const { title, act: actLabel } = words[purpose];
  return (
    <DialogFrame title={title}>
      {problem ? (
        <p className="field-problem" role="alert">
          {problem.message} {problem.remedy}
        </p>
      ) : null}
      {listing ? (
        <FolderList
          listing={listing}
          files={listing.projects}
          nothing={purpose === 'open' ? words.nothing : null}
          disabled={busy}
          onFolder={setFolder}
          onFile={(fileName) => {
            const bare = fileName.replace(/\.undergate$/i, '');
            if (purpose === 'open') void act(bare);
            else setName(bare);
          }}
        />
      ) : null}
      {purpose === 'open' ? null : (
        <form
          className="name-file"
          onSubmit={(event) => {
            event.preventDefault();
            if (whyNot === null) void act(trimmed);
          }}
        >
          <label htmlFor="file-name">{words.name}</label>
          <input
            id="file-name"
            type="text"
            maxLength={120}
            value={name}
            // biome-ignore lint/a11y/noAutofocus: the one thing this dialog asks for
            autoFocus
            onChange={(event) => setName(event.target.value)}
          />
          {purpose === 'copy' && exists ? (
            <span className="field check">
              <input
                id="file-replace"
                type="checkbox"
                checked={replace}
                onChange={(event) => setReplace(event.target.checked)}
              />
              <label htmlFor="file-replace">{words.replace}</label>
            </span>
          ) : null}
          {whyNot !== null && trimmed !== '' ? <p className="field-problem">{whyNot}</p> : null}
          <button type="submit" className="main" disabled={whyNot !== null || busy || !listing}>
            {actLabel}
          </button>
        </form>
      )}
    </DialogFrame>
  );
}

function whyNotName(
  name: string,
  purpose: FilePurpose,
  exists: boolean,
  replace: boolean,
  words: Texts['window']['frame']['dialogs']['files'],
): string | null {
  if (name === '') return words.noName;
  if (/[\\/:*?"<>|]/.test(name)) return words.badSigns;
  if (name.startsWith('.')) return words.leadingPoint;
  if (!exists || (purpose === 'copy' && replace)) return null;
  return purpose === 'copy' ? words.takenOrReplace : words.taken;
}
