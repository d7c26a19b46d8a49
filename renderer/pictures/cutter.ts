import type { PictureTile } from '../../core/api/pictureApi.ts';
import { sayLocale } from '../work/workerLocale.ts';
import type { FromCutter, ToCutter } from './messages.ts';

/** Why a picture could not be read; for the user. */
export class CutterProblem extends Error {}

/** The window's end of the worker that cuts one picture into tiles. */
export interface Cutter {
  open(file: File, turned: boolean): Promise<Extract<FromCutter, { type: 'described' }>>;
  /** The next tiles; null: that was all. */
  next(): Promise<readonly PictureTile[] | null>;
  /** Ends it, whatever it is doing; a call under way never answers. */
  end(): void;
}

export function startCutter(): Cutter {
  const worker = new Worker(new URL('./cutter.worker.ts', import.meta.url), { type: 'module' });
  sayLocale(worker);

  function ask(message: ToCutter): Promise<FromCutter> {
    return new Promise((resolve, reject) => {
      worker.onmessage = ({ data }: MessageEvent<FromCutter>) =>
        data.type === 'problem' ? reject(new CutterProblem(data.message)) : resolve(data);
      worker.onerror = () => reject(new CutterProblem('The picture can’t be read. Save it anew, or smaller.'));
      worker.postMessage(message);
    });
  }

  return {
    async open(file, turned) {
      const answer = await ask({ type: 'open', file, turned });
      if (answer.type !== 'described') throw new Error(`Unexpected answer: ${answer.type}`);
      return answer;
    },
    async next() {
      const answer = await ask({ type: 'next' });
      return answer.type === 'tiles' ? answer.tiles : null;
    },
    end: () => worker.terminate(),
  };
}
