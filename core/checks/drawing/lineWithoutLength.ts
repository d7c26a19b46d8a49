import { deleteThings } from '../../model/edits/deleteThings.ts';
import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** A fence line whose points all lie together, or that has fewer than two. */
export const lineWithoutLength: Check = ({ project }) =>
  [...project.fenceLine.values()].flatMap((line) => {
    if (!isPoint(line.path)) return [];
    return finding('lineWithoutLength', 'error', [line.id], {
      message: message('checks.lineWithoutLength.message', { thing: refTo(line) }),
      remedy: message('checks.lineWithoutLength.remedy'),
      at: line.path[0] ?? null,
      fixes: [
        {
          label: message('checks.lineWithoutLength.fix'),
          edit: deleteThings([{ kind: 'fenceLine', id: line.id }]),
          deletes: true,
        },
      ],
    });
  });

/** A millimetre is some 1e-8 degrees. */
const sameDeg = 1e-8;

function isPoint(path: readonly (readonly [number, number])[]): boolean {
  const [first] = path;
  return (
    !first || path.every(([lon, lat]) => Math.abs(lon - first[0]) <= sameDeg && Math.abs(lat - first[1]) <= sameDeg)
  );
}
