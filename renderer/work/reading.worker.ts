import { expose } from 'comlink';
import { type ImportChoices, importFeatures } from '../../core/exchange/intake/importFeatures.ts';
import { simplifiedPath } from '../../core/exchange/intake/simplifiedPath.ts';
import type { Preview, ReadResult } from '../../core/exchange/preview/types.ts';
import { readAny } from '../../core/exchange/readAny.ts';
import { difference } from '../../core/model/difference.ts';
import { EditRefused } from '../../core/model/edits/support/edit.ts';
import { projectOf } from '../../core/model/project.ts';
import type { LonLat, Thing } from '../../core/model/things.ts';
import { newId } from '../state/newId.ts';
import type { FileToRead, LineCounts, TakenIn } from './readingMessages.ts';
import { hearLocale } from './workerLocale.ts';

/**
 * Reads one file that comes in, says how far it is, and works out what the file makes of a property. It is ended from
 * outside, and has no hold on anything.
 */
let preview: Preview | null = null;

const readingRoom = {
  read({ fileName, bytes, options }: FileToRead, tell: (fraction: number) => void): ReadResult {
    let told = 0;
    const progress = (fraction: number) => {
      if (fraction - told < 0.02) return;
      told = fraction;
      tell(fraction);
    };
    const result = readAny(fileName, bytes, { ...options, progress });
    if (result.ok) preview = result.preview;
    return result;
  },
  count: countsOf,
  takeIn,
};
export type ReadingFunctions = typeof readingRoom;

hearLocale();
expose(readingRoom);

function countsOf(simplifyM: number): LineCounts {
  const { features, groups } = preview!;
  const origin: LonLat = groups[0]?.middle ?? [0, 0];
  let [before, after] = [0, 0];
  for (const { ours, shape, path } of features) {
    if (ours || (shape !== 'line' && shape !== 'outline')) continue;
    before += path.length;
    after += simplifiedPath(path, simplifyM, origin).length;
  }
  return { before, after };
}

function takeIn(things: readonly Thing[], choices: ImportChoices): TakenIn {
  const before = projectOf(things);
  try {
    const { project, problems, notes } = importFeatures(preview!, choices, before, newId);
    return { ok: true, changes: difference(before, project), problems, notes };
  } catch (error) {
    if (error instanceof EditRefused) return { ok: false, message: error.refusal.message };
    throw error;
  }
}
