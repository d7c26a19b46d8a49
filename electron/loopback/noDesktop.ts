import { callsBy } from '../../core/api/calls.ts';
import { fail } from '../../core/api/result.ts';

const notAvailable = fail(
  'not-available',
  'Only a desktop window has the dialogs of the system.',
  'Choose the file in the list of folders.',
);

/** What the desktop's calls answer where there is no desktop window. */
export const noDesktop = callsBy('desktop', () => Promise.resolve(notAvailable));
