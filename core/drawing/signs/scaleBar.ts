import type { Units } from '../../model/formatUnits.ts';
import { fixed } from '../../model/formatUnits.ts';
import type { Item, PaperBox, PaperPoint } from '../displayList.ts';
import { box, stroke, text } from '../paint.ts';
import { ink, letters, pen } from '../style.ts';

const barHeightMm = 1.5;
const parts = 4;

/** What a scale bar shows. */
export interface ScaleBar {
  /** Length of the whole bar on paper and on the ground. */
  readonly lengthMm: number;
  readonly lengthM: number;
  readonly unit: { readonly name: string; readonly lengthM: number };
}

const metric = [
  { name: 'm', lengthM: 1 },
  { name: 'km', lengthM: 1000 },
];
const imperial = [
  { name: 'ft', lengthM: 0.3048 },
  { name: 'mi', lengthM: 1609.344 },
];

/** The longest bar of round length that fits `mostMm`: 1, 2, 4 or 5 times a power of ten of its unit. */
export function scaleBarFor(scaleDenominator: number, units: Units, mostMm: number): ScaleBar {
  const mostM = (mostMm * scaleDenominator) / 1000;
  const [small, large] = units === 'metric' ? metric : imperial;
  // A mile or a kilometre and more is counted in the larger unit.
  const unit = mostM >= large!.lengthM ? large! : small!;
  const most = mostM / unit.lengthM;
  const power = 10 ** Math.floor(Math.log10(most));
  const times = [5, 4, 2, 1].find((n) => n * power <= most) ?? 1;
  const lengthM = times * power * unit.lengthM;
  return { lengthM, lengthMm: (lengthM * 1000) / scaleDenominator, unit };
}

/** The bar with its left end at `at` (top of the bar) and its figures above. Its outermost ink is exactly `lengthMm` apart. */
export function drawScaleBar(bar: ScaleBar, [x, y]: PaperPoint): Item[] {
  const part = bar.lengthMm / parts;
  const rim = pen.hairline / 2;
  const outline: PaperBox = [x + rim, y + rim, x + bar.lengthMm - rim, y + barHeightMm - rim];
  const whole = bar.lengthM / bar.unit.lengthM;
  const style = { sizePt: letters.small, font: 'figures', align: 'centre' } as const;
  const figure = (value: number) => fixed(value, decimalsOf(value));
  return [
    box(outline, ink.white, stroke(pen.hairline)),
    box([x, y, x + part, y + barHeightMm], ink.black),
    box([x + 2 * part, y, x + 3 * part, y + barHeightMm], ink.black),
    text('0', [x, y - 0.8], style),
    text(figure(whole / 2), [x + bar.lengthMm / 2, y - 0.8], style),
    text(`${figure(whole)} ${bar.unit.name}`, [x + bar.lengthMm, y - 0.8], style),
  ];
}

function decimalsOf(value: number): number {
  return [0, 1, 2, 3].find((n) => Math.abs(value - Number(value.toFixed(n))) < 1e-9) ?? 3;
}
