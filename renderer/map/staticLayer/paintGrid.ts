import { gridLines, gridSpacing } from '../plane/gridSpacing.ts';
import { viewBox } from '../plane/view.ts';
import type { Look } from './look.ts';

/** Lines of the grid stand at least this far apart. */
export const gridLeastPx = 56;

/** The blank grid of the working plane, every fifth (or second) line heavier. */
export function paintGrid({ ctx, view, input, palette }: Look): void {
  const { stepM, heavyEvery } = gridSpacing(view.pxPerM, input.units, gridLeastPx);
  const [west, south, east, north] = viewBox(view);
  const columns = gridLines(west, east, stepM);
  const rows = gridLines(south, north, stepM);
  for (const heavy of [false, true]) {
    ctx.beginPath();
    for (const n of columns) {
      if ((n % heavyEvery === 0) !== heavy) continue;
      const x = Math.round((n * stepM - view.westM) * view.pxPerM) + 0.5;
      ctx.moveTo(x, 0);
      ctx.lineTo(x, view.heightPx);
    }
    for (const n of rows) {
      if ((n % heavyEvery === 0) !== heavy) continue;
      const y = Math.round((view.northM - n * stepM) * view.pxPerM) + 0.5;
      ctx.moveTo(0, y);
      ctx.lineTo(view.widthPx, y);
    }
    ctx.strokeStyle = heavy ? palette.gridHeavy : palette.grid;
    ctx.lineWidth = 1;
    ctx.stroke();
  }
}
