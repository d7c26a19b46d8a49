import type { ToAnalysis } from './analysisMessages.ts';
import { AnalysisRoom } from './analysisRoom.ts';
import { hearLocale } from './workerLocale.ts';

const waiting: (() => void)[] = [];
const channel = new MessageChannel();
channel.port1.onmessage = () => waiting.shift()?.();

const room = new AnalysisRoom((message) => self.postMessage(message), {
  now: () => performance.now(),
  // A message to itself comes after those of the window that are there already.
  listen: (then) => {
    waiting.push(then);
    channel.port2.postMessage(null);
  },
  later: (ms, then) => {
    const timer = setTimeout(then, ms);
    return () => clearTimeout(timer);
  },
});

hearLocale();
self.addEventListener('message', ({ data }: MessageEvent<ToAnalysis>) => room.hear(data));
