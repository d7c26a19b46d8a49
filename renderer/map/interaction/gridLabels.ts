import { gridLines, gridSpacing } from '../../../core/drawing/strokes/gridSpacing.ts';
import { plainWords } from '../../../core/words/figures.ts';
import { farUnit, lengthUnit } from '../../../core/words/numbers/units.ts';
import { fixed, type Units } from '../../../core/words/numbers/write.ts';
import { viewBox } from '../plane/view.ts';
import { gridLeastPx } from '../staticLayer/drawGrid.ts';
import { mapFont } from '../staticLayer/mapFont.ts';
import type { PaintTools } from '../tools/tool.ts';

/** Figures of the grid stand at least this far apart. */
const leastApartPx = 110;

/** Eastings along the top edge and northings down the right one, in the working plane. */
export function paintGridLabels({ ctx, view, palette }: PaintTools, units: Units): void {
  const { stepM } = gridSpacing(view.pxPerM, units, gridLeastPx);
  const every = Math.max(1, Math.ceil(leastApartPx / (stepM * view.pxPerM)));
  const [west, south, east, north] = viewBox(view, -40);
  ctx.font = mapFont();
  ctx.lineJoin = 'round';
  ctx.strokeStyle = palette.paper;
  ctx.fillStyle = palette.inkSoft;
  ctx.lineWidth = 4;
  ctx.textBaseline = 'middle';
  const write = (text: string, x: number, y: number) => {
    ctx.strokeText(text, x, y);
    ctx.fillText(text, x, y);
  };
  ctx.textAlign = 'center';
  for (const n of gridLines(west, east, stepM)) {
    if (n % every === 0)
      write(gridFigure(n * stepM, stepM, units, 'east', 'west'), (n * stepM - view.westM) * view.pxPerM, 14);
  }
  ctx.textAlign = 'right';
  for (const n of gridLines(south, north, stepM)) {
    if (n % every !== 0) continue;
    write(
      gridFigure(n * stepM, stepM, units, 'north', 'south'),
      view.widthPx - 8,
      (view.northM - n * stepM) * view.pxPerM,
    );
  }
}

type Side = 'east' | 'west' | 'north' | 'south';

/**
 * "200 m E", "1.5 km S", "0"; in feet or miles where the screen is imperial. In the long unit only where the grid's steps are
 * plain figures in it: 6,000 ft, not 1.136 mi.
 */
export function gridFigure(coordinateM: number, stepM: number, units: Units, positive: Side, negative: Side): string {
  const sizeM = Math.abs(coordinateM);
  if (sizeM < 1e-6) return '0';
  const far = farUnit(units);
  const unit = sizeM >= far.lengthM - 0.05 && isPlain(stepM / far.lengthM) ? far : lengthUnit(units);
  const figure = `${trimmed(sizeM / unit.lengthM)} ${unit.name}`;
  return plainWords().window.map.grid[coordinateM < 0 ? negative : positive]({ figure });
}

function isPlain(figure: number): boolean {
  return Math.abs(figure * 1000 - Math.round(figure * 1000)) < 1e-6;
}

/** Up to three decimals, no zeros behind. */
function trimmed(figure: number): string {
  const decimals = [0, 1, 2].find((d) => Math.abs(figure - Number(figure.toFixed(d))) < 1e-6) ?? 3;
  return fixed(figure, decimals);
}
