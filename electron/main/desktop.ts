import { join } from 'node:path';
import { BrowserWindow, dialog, type WebContents } from 'electron';
import type { DesktopApi } from '../../core/api/projectApi.ts';
import { succeed } from '../../core/api/result.ts';
import { plainWords } from '../../core/words/figures.ts';
import { tileFileEnding } from '../host/tilePaths.ts';
import { fileEnding, withEnding } from '../store/fileFormat.ts';

const tileFilters = () => [{ name: plainWords().host.files.filters.maps, extensions: [tileFileEnding.slice(1)] }];
const projectFilters = () => [{ name: plainWords().host.files.filters.projects, extensions: [fileEnding.slice(1)] }];

/** The system's own dialogs, over the window that asks. */
export function desktopOf(contents: WebContents, projectFolder: string): DesktopApi {
  const parent = BrowserWindow.fromWebContents(contents);
  const chooseFile = async (filters: Electron.FileFilter[]) => {
    const options: Electron.OpenDialogOptions = { defaultPath: projectFolder, filters, properties: ['openFile'] };
    const { filePaths } = await (parent ? dialog.showOpenDialog(parent, options) : dialog.showOpenDialog(options));
    return filePaths[0] ?? null;
  };
  return {
    async chooseOpenPath() {
      return succeed(await chooseFile(projectFilters()));
    },
    async chooseTileFile() {
      return succeed(await chooseFile(tileFilters()));
    },
    async chooseSavePath({ suggestedName }) {
      const options: Electron.SaveDialogOptions = {
        defaultPath: join(projectFolder, suggestedName),
        filters: projectFilters(),
      };
      const { filePath } = await (parent ? dialog.showSaveDialog(parent, options) : dialog.showSaveDialog(options));
      return succeed(filePath ? withEnding(filePath) : null);
    },
  };
}
