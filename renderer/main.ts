import { firstCalls } from './client/firstCalls.ts';

// The host is asked before the rest of the page is there, and answers while that is being fetched.
const first = firstCalls();
// Not awaited here: the rest may share code with this file, which it could not have while this waits for it.
void import('./window.tsx').then(({ showWindow }) => showWindow(first));
