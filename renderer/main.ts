import { firstCalls } from './client/firstCalls.ts';

// The host is asked before the rest of the page is there, and answers while that is being fetched.
const first = firstCalls();
// Not awaited here: the window's code may ask for what lies in this file, and would wait for its end.
void import('./window.tsx').then(({ showWindow }) => showWindow(first));
