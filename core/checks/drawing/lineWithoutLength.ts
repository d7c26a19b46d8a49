import { deleteThings } from '../../model/edits/deleteThings.ts';
import type { Check } from '../support/context.ts';
import { finding, headed } from '../support/make.ts';

/** A fence line whose points all lie together, or that has fewer than two. */
export const lineWithoutLength: Check = ({ project }) =>
  [...project.fenceLine.values()].flatMap((line) => {
    if (!isPoint(line.path)) return [];
    return finding('lineWithoutLength', 'error', [line.id], {
      message: `${headed(line)} has no length: all its points lie together.`,
      remedy: 'Move one of its ends, or delete it.',
      at: line.path[0] ?? null,
      fixes: [{ label: 'Delete the line', edit: deleteThings([{ kind: 'fenceLine', id: line.id }]), deletes: true }],
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
