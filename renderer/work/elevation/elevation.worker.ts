import { hearLocale } from '../workerLocale.ts';
import type { ElevationRead, ElevationRequest } from './messages.ts';
import { readElevation } from './readElevation.ts';

hearLocale();

/** Reads one elevation model beside the window. */
self.addEventListener('message', ({ data }: MessageEvent<ElevationRequest>) => {
  void readElevation(data).then(send, (error: unknown) => {
    const why = error instanceof Error ? error.message : String(error);
    send({ ok: false, message: `The elevation model could not be read (${why.slice(0, 200)}).`, askSystem: null });
  });
});

function send(message: ElevationRead): void {
  self.postMessage(message);
}
