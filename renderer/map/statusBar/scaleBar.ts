import { farUnit, lengthUnit } from '../../../core/words/numbers/units.ts';
import { fixed, type Units } from '../../../core/words/numbers/write.ts';

export interface ScaleBar {
  readonly widthPx: number;
  readonly text: string;
}

/** The longest round length that a bar of at most `mostPx` can show: 1, 2 or 5 times a power of ten. */
export function scaleBar(pxPerM: number, units: Units, mostPx: number): ScaleBar {
  const mostM = mostPx / pxPerM;
  const [unitM, unit] = unitFor(mostM, units);
  const most = mostM / unitM;
  const power = 10 ** Math.floor(Math.log10(most) + 1e-9);
  const step = [5, 2, 1].find((each) => each * power <= most * (1 + 1e-9)) ?? 1;
  const figure = step * power;
  const decimals = Math.max(0, -Math.floor(Math.log10(figure) + 1e-9));
  return { widthPx: figure * unitM * pxPerM, text: `${fixed(figure, decimals)} ${unit}` };
}

function unitFor(mostM: number, units: Units): readonly [metres: number, name: string] {
  const { lengthM, name } = mostM >= farUnit(units).lengthM ? farUnit(units) : lengthUnit(units);
  return [lengthM, name];
}
