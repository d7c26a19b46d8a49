import { fixed, formatLength, formatTape, type Units } from '../../../core/words/numbers/write.ts';

/** What one pixel covers, from thousandths of a millimetre to kilometres. */
export function formatPixel(metresPerPixel: number, units: Units): string {
  if (metresPerPixel >= 100) return formatLength(metresPerPixel, units);
  if (metresPerPixel >= 0.1) return formatTape(metresPerPixel, units);
  const millimetres = metresPerPixel * 1000;
  const least = 0.001;
  return millimetres < least ? `under ${least} mm` : `${fixed(millimetres, millimetres < 1 ? 3 : 1)} mm`;
}
