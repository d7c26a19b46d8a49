import { sayLocale } from '../workerLocale.ts';
import type { ElevationRead, ElevationRequest } from './messages.ts';

/** Reads an elevation model beside the window; `signal` stops it, and then nothing is answered. */
export function elevation(request: ElevationRequest, signal: AbortSignal): Promise<ElevationRead> {
  const worker = new Worker(new URL('./elevation.worker.ts', import.meta.url), { type: 'module' });
  sayLocale(worker);
  signal.addEventListener('abort', () => worker.terminate());
  return new Promise((resolve) => {
    const end = (read: ElevationRead) => {
      worker.terminate();
      resolve(read);
    };
    worker.addEventListener('message', ({ data }: MessageEvent<ElevationRead>) => end(data));
    worker.addEventListener('error', ({ message }) => {
      end({ ok: false, message: `The elevation model could not be read (${message.slice(0, 200)}).`, askSystem: null });
    });
    worker.postMessage(request);
  });
}
