import type { Item } from '../../../core/drawing/displayList.ts';
import { gridLines, gridSpacing } from '../../../core/drawing/strokes/gridSpacing.ts';
import { createTraces } from '../../../core/drawing/traces.ts';
import { viewBox } from '../plane/view.ts';
import type { Look } from './look.ts';

/** Lines of the grid stand at least this far apart. */
export const gridLeastPx = 56;

/** The blank grid of the working plane, every fifth (or second) line heavier. */
export function drawGrid({ view, input, palette }: Pick<Look, 'view' | 'input' | 'palette'>): Item[] {
  const { stepM, heavyEvery } = gridSpacing(view.pxPerM, input.units, gridLeastPx);
  const [west, south, east, north] = viewBox(view);
  const columns = gridLines(west, east, stepM);
  const rows = gridLines(south, north, stepM);
  return [false, true].map((heavy) => {
    const traces = createTraces();
    const line = (ax: number, ay: number, bx: number, by: number) => {
      traces.begin();
      traces.add(ax, ay);
      traces.add(bx, by);
    };
    for (const n of columns) {
      if ((n % heavyEvery === 0) !== heavy) continue;
      const x = Math.round((n * stepM - view.westM) * view.pxPerM) + 0.5;
      line(x, 0, x, view.heightPx);
    }
    for (const n of rows) {
      if ((n % heavyEvery === 0) !== heavy) continue;
      const y = Math.round((view.northM - n * stepM) * view.pxPerM) + 0.5;
      line(0, y, view.widthPx, y);
    }
    return traces.done({ width: 1, ink: heavy ? palette.gridHeavy : palette.grid });
  });
}
