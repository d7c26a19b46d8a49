import type { FolderListing, ListedFile } from '../../../core/api/projectApi.ts';
import { momentText } from '../../../core/words/dates.ts';
import { useWords } from '../../state/useFigures.ts';

/** A folder's folders and some of its files, each a button. */
export function FolderList({
  listing,
  files,
  nothing,
  disabled,
  onFolder,
  onFile,
}: {
  readonly listing: FolderListing;
  readonly files: readonly ListedFile[];
  /** Said where there are no such files; null: nothing is said. */
  readonly nothing: string | null;
  readonly disabled: boolean;
  readonly onFolder: (path: string) => void;
  readonly onFile: (name: string) => void;
}) {
  const { path, parent, folders } = listing;
  const { files: words } = useWords().window.frame.dialogs;
  return (
    <>
      <p className="path">{path}</p>
      <ul className="folder">
        {parent !== null ? (
          <li>
            <button type="button" className="plain" onClick={() => onFolder(parent)}>
              {words.above}
            </button>
          </li>
        ) : null}
        {folders.map((folder) => (
          <li key={folder}>
            <button type="button" className="plain" onClick={() => onFolder(joinPath(path, folder))}>
              {words.folder({ name: folder })}
            </button>
          </li>
        ))}
        {files.map(({ name, changedAt, sizeBytes }) => (
          <li key={name}>
            <button type="button" className="project-file" disabled={disabled} onClick={() => onFile(name)}>
              <strong>{name}</strong>
              <span>
                {words.facts({
                  changed: momentText(new Date(changedAt)),
                  kilobytes: Math.max(1, Math.round(sizeBytes / 1024)),
                })}
              </span>
            </button>
          </li>
        ))}
        {nothing !== null && files.length === 0 ? <li>{nothing}</li> : null}
      </ul>
    </>
  );
}

/** Folder and name in the way the folder's own path is written. */
export function joinPath(folder: string, name: string): string {
  const separator = folder.includes('\\') && !folder.includes('/') ? '\\' : '/';
  return folder.endsWith(separator) ? `${folder}${name}` : `${folder}${separator}${name}`;
}
