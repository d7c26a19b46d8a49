import { readAny } from '../../core/exchange/readAny.ts';
import type { FromReading, ToReading } from './readingMessages.ts';

/** Reads one file that comes in, and says how far it is. It is ended from outside, and has no hold on anything. */
self.addEventListener('message', ({ data }: MessageEvent<ToReading>) => {
  const { fileName, bytes, options } = data;
  let told = 0;
  const progress = (fraction: number) => {
    if (fraction - told < 0.02) return;
    told = fraction;
    send({ type: 'progress', fraction });
  };
  try {
    send({ type: 'read', result: readAny(fileName, bytes, { ...options, progress }) });
  } catch (error) {
    send({ type: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
});

function send(message: FromReading): void {
  self.postMessage(message);
}
