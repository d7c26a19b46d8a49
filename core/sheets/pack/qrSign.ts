import type { PaperPoint, TaggedItem } from '../../drawing/displayList.ts';
import { figure } from '../../drawing/paint.ts';
import { ink } from '../../drawing/style.ts';

/** Modules of white that a QR code needs around it (ISO/IEC 18004). */
export const quietModules = 4;

/**
 * A QR code as vectors with its quiet zone inside `sizeMm`; `alternative` says what it holds. Neighbouring modules of a
 * row are one rectangle, so that no hairline parts them.
 */
export function qrSign(
  modules: readonly (readonly boolean[])[],
  [left, top]: PaperPoint,
  sizeMm: number,
  alternative: string,
): TaggedItem {
  const moduleMm = sizeMm / (modules.length + 2 * quietModules);
  const x = (column: number) => left + (quietModules + column) * moduleMm;
  const y = (row: number) => top + (quietModules + row) * moduleMm;
  const paths = modules.flatMap((cells, row) =>
    darkRuns(cells).map(([from, to]): PaperPoint[] => [
      [x(from), y(row)],
      [x(to), y(row)],
      [x(to), y(row + 1)],
      [x(from), y(row + 1)],
    ]),
  );
  return figure(alternative, [{ kind: 'path', paths, closed: true, stroke: null, fill: ink.black }]);
}

/** Stretches of dark cells, each from its first to just past its last. */
function darkRuns(cells: readonly boolean[]): (readonly [from: number, to: number])[] {
  const runs: (readonly [number, number])[] = [];
  let from: number | null = null;
  for (let i = 0; i <= cells.length; i++) {
    const dark = cells[i] ?? false;
    if (dark && from === null) from = i;
    if (!dark && from !== null) {
      runs.push([from, i]);
      from = null;
    }
  }
  return runs;
}
