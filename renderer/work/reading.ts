import type { ReadResult } from '../../core/exchange/preview/types.ts';
import type { FromReading, ToReading } from './readingMessages.ts';

export interface ReadingNews {
  readonly progress: (fraction: number) => void;
  readonly read: (result: ReadResult) => void;
}

/** Reads a file beside the window. The answer stops it: nothing is heard of it from then on. */
export function startReading(request: ToReading, news: ReadingNews): () => void {
  const worker = new Worker(new URL('./reading.worker.ts', import.meta.url), { type: 'module' });
  const end = (result: ReadResult) => {
    worker.terminate();
    news.read(result);
  };
  worker.addEventListener('message', ({ data }: MessageEvent<FromReading>) => {
    if (data.type === 'progress') news.progress(data.fraction);
    else if (data.type === 'read') end(data.result);
    else end(failed(data.message));
  });
  worker.addEventListener('error', (event) => end(failed(event.message)));
  worker.postMessage(request);
  return () => worker.terminate();
}

function failed(message: string): ReadResult {
  return {
    ok: false,
    message: `The file could not be read (${message.slice(0, 200)}).`,
    remedy: 'Nothing was changed. Save the file again from the program that made it, or split it.',
  };
}
