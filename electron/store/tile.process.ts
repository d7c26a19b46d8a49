import { lstatSync } from 'node:fs';
import { dirname } from 'node:path';
import { isMainThread, Worker, workerData } from 'node:worker_threads';
import { message } from '../../core/words/message.ts';
import { TileFile } from './tileFile.ts';
import type { TileAsked, TileCall, TileTold } from './tileMessages.ts';
import { TileProblem } from './tileProblem.ts';

// The process that reads tile files: see `tileReader.ts`. Its own second thread ends it where the first can't end any more.

/** More memory than this is no map's doing. */
const mostBytes = 600 * 1024 * 1024;
const watchEveryMs = 100;
/** The host ends this process itself when the time is over; where it is gone, the process does so a little later. */
const graceMs = 1000;

const mostOpen = 8;

if (isMainThread) answerCalls();
else watch(new BigInt64Array(workerData as SharedArrayBuffer));

function answerCalls(): void {
  const deadline = new BigInt64Array(new SharedArrayBuffer(8));
  const files = new Map<string, TileFile>();
  process.on('disconnect', endNow);
  process.on('message', ({ call, withinMs }: TileAsked) => {
    Atomics.store(deadline, 0, BigInt(Date.now() + withinMs + graceMs));
    const told = answer(files, call);
    Atomics.store(deadline, 0, 0n);
    tell(told);
  });
  const watcher = new Worker(import.meta.filename, { workerData: deadline.buffer });
  watcher.once('error', endNow);
  watcher.once('online', () => tell({ ready: true }));
}

function tell(told: TileTold): void {
  process.send!(told);
}

function answer(files: Map<string, TileFile>, call: TileCall): TileTold {
  try {
    return {
      value: call.what === 'facts' ? factsOf(call) : fileFor(files, call).tile(call.zoom, call.column, call.row),
    };
  } catch (error) {
    if (error instanceof TileProblem) return { problem: error.told };
    const { code = '', message } = error as Partial<NodeJS.ErrnoException>;
    return { error: { code, message: message ?? String(error) } };
  }
}

function factsOf(call: TileCall) {
  const file = opened(call);
  try {
    return file.facts();
  } finally {
    file.close();
  }
}

/** The newest use is kept last, so that the first is the one to close. */
function fileFor(files: Map<string, TileFile>, call: TileCall): TileFile {
  const file = files.get(call.path) ?? opened(call);
  files.delete(call.path);
  files.set(call.path, file);
  for (const [oldest, old] of files) {
    if (files.size <= mostOpen) break;
    old.close();
    files.delete(oldest);
  }
  return file;
}

function opened({ path, below }: TileCall): TileFile {
  if (below !== null) assertNoLink(path, below);
  return new TileFile(path);
}

function assertNoLink(path: string, below: string): void {
  for (let at = path; at.length > below.length; at = dirname(at)) {
    if (lstatSync(at).isSymbolicLink()) {
      const what = message('host.maps.link.message', { path: at });
      throw new TileProblem('ask-first', what, message('host.maps.link.remedy'));
    }
  }
}

function watch(deadline: BigInt64Array): void {
  setInterval(() => {
    const until = Atomics.load(deadline, 0);
    if ((until !== 0n && Date.now() > until) || process.memoryUsage.rss() > mostBytes) endNow();
  }, watchEveryMs);
}

/** Also while SQLite is at work, or the system at opening a file. */
function endNow(): void {
  process.kill(process.pid, 'SIGKILL');
}
