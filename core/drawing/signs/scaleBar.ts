import { farUnit, lengthUnit } from '../../words/numbers/units.ts';
import { fixed, type Units } from '../../words/numbers/write.ts';
import type { Item, PaperBox, PaperPoint } from '../displayList.ts';
import { box, text } from '../paint.ts';
import { type Pen, paperPen, penStroke } from '../pen.ts';
import { letters, pen as pens } from '../style.ts';

const barHeightMm = 1.5;
const parts = 4;

/** What a scale bar shows. */
export interface ScaleBar {
  /** Length of the whole bar in the drawing and on the ground. */
  readonly length: number;
  readonly lengthM: number;
  readonly unit: { readonly name: string; readonly lengthM: number };
}

/** The longest bar of round length that fits `most`: 1, 2, 4 or 5 times a power of ten of its unit; `perM` of the drawing to a metre. */
export function longestBar(perM: number, units: Units, most: number): ScaleBar {
  const mostM = most / perM;
  const [small, large] = [lengthUnit(units), farUnit(units)];
  // A mile or a kilometre and more is counted in the larger unit.
  const unit = mostM >= large.lengthM ? large : small;
  const fits = (mostM / unit.lengthM) * (1 + 1e-9);
  const power = 10 ** Math.floor(Math.log10(fits));
  const times = [5, 4, 2, 1].find((n) => n * power <= fits) ?? 1;
  const lengthM = times * power * unit.lengthM;
  return { lengthM, length: lengthM * perM, unit };
}

/** The longest bar on paper at a scale, millimetres. */
export function scaleBarFor(scaleDenominator: number, units: Units, mostMm: number): ScaleBar {
  return longestBar(1000 / scaleDenominator, units, mostMm);
}

/** "200 m": what the whole bar is long on the ground. */
export function barText({ lengthM, unit }: ScaleBar): string {
  return `${figure(lengthM / unit.lengthM)} ${unit.name}`;
}

/** The bar with its left end at `at` (top of the bar) and its figures above. Its outermost ink is exactly `length` apart. */
export function drawScaleBar(bar: ScaleBar, [x, y]: PaperPoint, pen: Pen = paperPen): Item[] {
  const { unit, inks } = pen;
  const part = bar.length / parts;
  const outlinePen = penStroke(pen, pens.hairline);
  const rim = outlinePen.width / 2;
  const bottom = y + barHeightMm * unit;
  const outline: PaperBox = [x + rim, y + rim, x + bar.length - rim, bottom - rim];
  const style = { sizePt: letters.small * unit, font: 'figures', align: 'centre', ink: inks.ink } as const;
  const above = y - 0.8 * unit;
  return [
    box(outline, inks.paper, outlinePen),
    box([x, y, x + part, bottom], inks.ink),
    box([x + 2 * part, y, x + 3 * part, bottom], inks.ink),
    text('0', [x, above], style),
    text(figure(bar.lengthM / bar.unit.lengthM / 2), [x + bar.length / 2, above], style),
    text(barText(bar), [x + bar.length, above], style),
  ];
}

function figure(value: number): string {
  const decimals = [0, 1, 2, 3].find((n) => Math.abs(value - Number(value.toFixed(n))) < 1e-9) ?? 3;
  return fixed(value, decimals);
}
