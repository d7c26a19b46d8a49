import type { Figures, Phrase } from '../types.ts';
import { calls } from './host/calls.ts';
import { files } from './host/files.ts';
import { maps } from './host/maps.ts';
import { start } from './host/start.ts';

/** What the host, its files and the start say. */
export const host = {
  files,
  maps,
  calls,
  start,
  /** A problem in a terminal: what is wrong, and what to do. */
  problem: ({ message, remedy }: { message: string; remedy: string }) => `${message} ${remedy}`,
  /** What a thing holds that only a newer version knows. */
  unknown: {
    tooMuch: ({ kind, id, why }: { kind: string; id: string; why: Phrase }, f: Figures) =>
      `What this version does not know of ${kind} ${id} ${f.say(why)}.`,
    nests: ({ most }: { most: number }) => `nests more than ${most} deep`,
    takes: ({ kb, mostKb }: { kb: number; mostKb: number }) =>
      `takes ${kb} kB, and one thing can have ${mostKb} kB of it at most`,
  },
};
