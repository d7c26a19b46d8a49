import type { DesktopApi } from '../../core/api/desktopApi.ts';
import { fail } from '../../core/api/result.ts';

const notAvailable = fail(
  'not-available',
  'Only a desktop window has the dialogs of the system.',
  'Choose the file in the list of folders.',
);

/** What `DesktopApi` is where there is no desktop window. */
export const noDesktop: DesktopApi = {
  chooseOpenPath: () => Promise.resolve(notAvailable),
  chooseTileFile: () => Promise.resolve(notAvailable),
  chooseSavePath: () => Promise.resolve(notAvailable),
};
