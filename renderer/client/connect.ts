import type { Host } from '../../core/api/projectApi.ts';
import { enter } from './enter.ts';
import { connectLoopback } from './loopback.ts';

declare global {
  interface Window {
    /** Put there by the preload of a desktop window; nowhere else. */
    readonly undergate?: Host;
  }
}

/** Finds the host: what the preload put there, else the loopback host that served this page. Throws `NotLetIn`. */
export async function connect(): Promise<Host> {
  return window.undergate ?? connectLoopback({ origin: location.origin, token: await enter() });
}
