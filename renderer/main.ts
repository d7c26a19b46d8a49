import { firstCalls } from './client/firstCalls.ts';

// The host is asked before the rest of the page is there, and answers while that is being fetched.
const first = firstCalls();
// Nothing waits at the top: the window shares code with this script, and each would wait for the other.
void import('./window.tsx').then(({ showWindow }) => showWindow(first));
