import { firstCalls } from './client/firstCalls.ts';

// The host is asked before the rest of the page is there, and answers while that is being fetched.
const first = firstCalls();
const { showWindow } = await import('./window.tsx');
showWindow(first);
