import { callsBy } from '../../core/api/calls.ts';
import { fail } from '../../core/api/result.ts';
import { plainWords } from '../../core/words/figures.ts';

function notAvailable() {
  const { message, remedy } = plainWords().host.calls.noDialogs;
  return fail('not-available', message, remedy);
}

/** What the desktop's calls answer where there is no desktop window. */
export const noDesktop = callsBy('desktop', () => Promise.resolve(notAvailable()));
