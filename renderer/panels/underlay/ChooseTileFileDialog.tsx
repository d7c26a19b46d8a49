import { useEffect, useState } from 'react';
import type { FolderListing } from '../../../core/api/projectApi.ts';
import type { Problem } from '../../../core/api/result.ts';
import { host } from '../../state/session.ts';
import { useWords } from '../../state/useFigures.ts';
import { closeDialog, DialogFrame } from '../dialogs/DialogFrame.tsx';
import { FolderList, joinPath } from '../dialogs/FolderList.tsx';
import { layTileFile } from './tileFile.ts';

/** Choosing an MBTiles file where the system's own dialog is not to be had. */
export function ChooseTileFileDialog() {
  const words = useWords();
  const { add } = words.window.background;
  /** The folder asked for; null: the user's project folder. */
  const [folder, setFolder] = useState<string | null>(null);
  const [listing, setListing] = useState<FolderListing | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
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
  const take = async (path: string) => {
    setBusy(true);
    const why = await layTileFile(path);
    setBusy(false);
    if (why) setProblem(why);
    else closeDialog();
  };
  return (
    <DialogFrame title={add.mapFile}>
      <p>{add.whichFile}</p>
      {problem ? (
        <p className="field-problem" role="alert">
          {words.host.problem(problem)}
        </p>
      ) : null}
      {busy ? <p role="status">{add.opening}</p> : null}
      {listing ? (
        <FolderList
          listing={listing}
          files={listing.tileFiles}
          nothing={add.noFiles}
          disabled={busy}
          onFolder={setFolder}
          onFile={(name) => void take(joinPath(listing.path, name))}
        />
      ) : null}
    </DialogFrame>
  );
}
