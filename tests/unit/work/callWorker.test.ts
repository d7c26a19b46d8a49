import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type Cutter, CutterProblem, startCutter } from '../../../renderer/pictures/cutter.ts';
import { callWorker, Ended, Lost } from '../../../renderer/work/callWorker.ts';
import { elevation } from '../../../renderer/work/elevation/elevation.ts';
import { useOrderRoom, workOutFigures, workOutOrder } from '../../../renderer/work/order.ts';
import { startReading } from '../../../renderer/work/reading.ts';
import { CalledWorker } from '../../support/calledWorker.ts';
import { drawing } from '../../support/drawings.ts';
import { allInEnglish } from '../../support/english.ts';

const never = () => new Promise<never>(() => {});
const failing = () => {
  throw new RangeError('too deep');
};
const last = () => CalledWorker.made.at(-1)!;
const errorOf = (work: Promise<unknown>) => work.then(() => null).catch((error: unknown) => error);

/** How a worker may fail a question that it never answers. */
const losses: [string, (worker: CalledWorker) => void, string][] = [
  ['dies', (worker) => worker.breaks('out of memory'), 'out of memory'],
  ['has a script that does not load', (worker) => worker.breaks(''), 'its script could not be loaded'],
  [
    'answers what can’t be read',
    (worker) => worker.dispatchEvent(new Event('messageerror')),
    'an answer could not be read',
  ],
];

beforeEach(() => {
  CalledWorker.made = [];
  vi.stubGlobal('Worker', CalledWorker);
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('a worker whose functions are called', () => {
  const room = (options = {}) =>
    callWorker<{ double(value: number): number; fail(): never; never(): Promise<never> }>(
      new Worker('invented.js') as never,
      options,
    );
  beforeEach(() => {
    CalledWorker.functions = { double: (value: number) => 2 * value, fail: failing, never };
  });

  it('answers, and its errors come back with their words while it goes on', async () => {
    const called = room();
    expect(await called.ask(({ double }) => double(21))).toBe(42);
    expect(await errorOf(called.ask(({ fail }) => fail()))).toMatchObject({ name: 'RangeError', message: 'too deep' });
    expect(await called.ask(({ double }) => double(2))).toBe(4);
    called.end();
  });

  it.each(losses)('that %s fails what waits for it, now and later, and is ended', async (_what, lose, why) => {
    const onLoss = vi.fn();
    const called = room({ onLoss });
    const waiting = [1, 2].map(() => errorOf(called.ask((functions) => functions.never())));
    lose(last());
    for (const error of await Promise.all(waiting)) expect(error).toEqual(new Lost(why));
    expect(await errorOf(called.ask(({ double }) => double(1)))).toEqual(new Lost(why));
    expect(onLoss).toHaveBeenCalledOnce();
    expect(last().isEnded).toBe(true);
  });

  it('that does not answer in time is given up', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const waiting = errorOf(room({ patienceMs: 5000 }).ask((functions) => functions.never()));
    vi.advanceTimersByTime(5000);
    expect(await waiting).toEqual(new Lost('it gave no answer for 5 s'));
    expect(last().isEnded).toBe(true);
  });

  it('that is ended from here says so to whoever waits, and is no loss', async () => {
    const onLoss = vi.fn();
    const called = room({ onLoss });
    const waiting = errorOf(called.ask((functions) => functions.never()));
    called.end();
    expect(await waiting).toBeInstanceOf(Ended);
    expect(onLoss).not.toHaveBeenCalled();
  });
});

describe('the order', () => {
  const settled = () => vi.waitFor(() => expect(useOrderRoom.getState().busy).toBe(false));
  // The next test begins without a worker.
  afterEach(async () => {
    CalledWorker.made.at(-1)?.breaks('over');
    await settled();
  });

  it.each(losses)('whose worker %s says why, and the next question starts another', async (_what, lose, why) => {
    CalledWorker.functions = { order: never, figures: never };
    workOutOrder(drawing());
    const figures = workOutFigures(drawing());
    expect(useOrderRoom.getState()).toMatchObject({ busy: true, failed: null });
    lose(last());
    await settled();
    expect(useOrderRoom.getState().failed).toBe(why);
    expect(await figures).toEqual({ ok: false, why });
    CalledWorker.functions = { order: () => ({ takeOff: {}, order: {} }), figures: failing };
    const project = drawing();
    workOutOrder(project);
    await settled();
    expect(useOrderRoom.getState()).toMatchObject({ failed: null, worked: { of: project } });
    expect(CalledWorker.made).toHaveLength(2);
  });

  it('that can’t be worked out says why, and keeps its worker', async () => {
    CalledWorker.functions = { order: failing, figures: failing };
    workOutOrder(drawing());
    await settled();
    expect(useOrderRoom.getState().failed).toBe('too deep');
    expect(await workOutFigures(drawing())).toEqual({ ok: false, why: 'too deep' });
    expect(last().isEnded).toBe(false);
  });

  it('that never comes is given up after two minutes', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    CalledWorker.functions = { order: never };
    workOutOrder(drawing());
    vi.advanceTimersByTime(120_000);
    vi.useRealTimers();
    await settled();
    expect(useOrderRoom.getState().failed).toBe('it gave no answer for 120 s');
  });

  it('figures that had to give way to a newer order are worked out all the same', async () => {
    let clock = 0;
    vi.spyOn(performance, 'now').mockImplementation(() => clock);
    CalledWorker.functions = { order: never, figures: never };
    workOutOrder(drawing());
    const figures = workOutFigures(drawing());
    CalledWorker.functions = { order: never, figures: () => 'figures' };
    clock = 1000;
    workOutOrder(drawing());
    expect(await figures).toEqual({ ok: true, figures: 'figures' });
    vi.restoreAllMocks();
  });
});

describe('a file that is read', () => {
  const file = { fileName: 'lines.kml', bytes: new Uint8Array(3), options: { swap: false, nearTo: null, grid: null } };
  const read = () => {
    const results: unknown[] = [];
    const progress: number[] = [];
    const room = startReading(file, { progress: (at) => progress.push(at), read: (result) => results.push(result) });
    return { room, results, progress };
  };

  it('tells how far it is, and is read once', async () => {
    CalledWorker.functions = {
      read: async (_file: unknown, tell: (at: number) => Promise<void>) => {
        await tell(0.5);
        return { ok: true, preview: {} };
      },
    };
    const { results, progress } = read();
    await vi.waitFor(() => expect(results).toEqual([{ ok: true, preview: {} }]));
    expect(progress).toEqual([0.5]);
  });

  it.each(losses)(
    'by a worker that %s says so, and what is asked of it then is answered too',
    async (_what, lose, why) => {
      CalledWorker.functions = { read: never };
      const { room, results } = read();
      lose(last());
      const message = `The file could not be read (${why}).`;
      await vi.waitFor(() => expect(allInEnglish(results)).toEqual([expect.objectContaining({ ok: false, message })]));
      expect(await room.count(1)).toBeNull();
      expect(await room.takeIn(drawing(), {} as never)).toMatchObject({ ok: false });
    },
  );

  it('says why it could not be taken in', async () => {
    CalledWorker.functions = { read: () => ({ ok: true, preview: {} }), takeIn: failing, count: failing };
    const { room } = read();
    expect(allInEnglish(await room.takeIn(drawing(), {} as never))).toMatchObject({
      ok: false,
      message: 'The file could not be imported, by a fault of this program (too deep).',
    });
    expect(await room.count(1)).toBeNull();
  });

  it.each(['read', 'takeIn', 'count'])('is stopped while it is in %s', async (phase) => {
    CalledWorker.functions = { read: () => ({ ok: true, preview: {} }), takeIn: never, count: never, [phase]: never };
    const { room, results } = read();
    if (phase !== 'read') await vi.waitFor(() => expect(results).toHaveLength(1));
    const asked = phase === 'count' ? room.count(1) : room.takeIn(drawing(), {} as never);
    room.end();
    expect(last().isEnded).toBe(true);
    expect(await asked).toEqual(phase === 'count' ? null : expect.objectContaining({ ok: false }));
    expect(results).toHaveLength(phase === 'read' ? 0 : 1);
  });
});

describe('an elevation model', () => {
  const request = { file: new Blob(), area: null, unit: null, system: null };

  it.each(losses)('read by a worker that %s says so', async (_what, lose, why) => {
    CalledWorker.functions = { read: never };
    const read = elevation(request, new AbortController().signal);
    lose(last());
    expect(allInEnglish(await read)).toMatchObject({
      ok: false,
      message: `The elevation model could not be read (${why}).`,
    });
  });

  it('that can’t be read says why, and one that is stopped says nothing', async () => {
    CalledWorker.functions = { read: failing };
    expect(allInEnglish(await elevation(request, new AbortController().signal))).toMatchObject({
      message: 'The elevation model could not be read (too deep).',
    });
    CalledWorker.functions = { read: never };
    const abort = new AbortController();
    const read = elevation(request, abort.signal);
    abort.abort();
    expect(await read).toBeNull();
    expect(last().isEnded).toBe(true);
  });
});

describe('a picture that is cut', () => {
  const problemOf = (cutter: Cutter) => errorOf(cutter.next());

  it.each(losses)('by a worker that %s says what to do', async (_what, lose) => {
    CalledWorker.functions = { next: never };
    const problem = problemOf(startCutter());
    lose(last());
    expect(await problem).toEqual(new CutterProblem('The picture can’t be read. Save it anew, or smaller.'));
  });

  it('hands on what is wrong with it', async () => {
    CalledWorker.functions = { next: failing };
    expect(await problemOf(startCutter())).toEqual(new CutterProblem('too deep'));
  });
});
