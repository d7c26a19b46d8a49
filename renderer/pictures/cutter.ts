import type { PictureTile } from '../../core/api/pictureApi.ts';
import { plainWords } from '../../core/words/figures.ts';
import { faultText } from '../state/report.ts';
import { type Called, callWorker, Ended, Lost } from '../work/callWorker.ts';
import type { CutterFunctions, Described } from './cutter.worker.ts';

/** Why a picture could not be read; for the user. */
export class CutterProblem extends Error {}

/** The window's end of the worker that cuts one picture into tiles. */
export interface Cutter {
  open(file: File, turned: boolean): Promise<Described>;
  /** The next tiles; null: that was all. */
  next(): Promise<readonly PictureTile[] | null>;
  /** Ends it, whatever it is doing; a call under way fails with `Ended`. */
  end(): void;
}

export function startCutter(): Cutter {
  const worker = new Worker(new URL('./cutter.worker.ts', import.meta.url), { type: 'module' });
  const room = callWorker<CutterFunctions>(worker);
  const ask: Called<CutterFunctions>['ask'] = async (question) => {
    try {
      return await room.ask(question);
    } catch (error) {
      if (error instanceof Ended) throw error;
      const lost = error instanceof Lost;
      throw new CutterProblem(lost ? plainWords().window.background.pictures.lost : faultText(error), {
        cause: error,
      });
    }
  };
  return {
    open: (file, turned) => ask(({ open }) => open(file, turned)),
    next: () => ask(({ next }) => next()),
    end: room.end,
  };
}
