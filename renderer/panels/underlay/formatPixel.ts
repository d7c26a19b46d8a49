import type { Figures } from '../../../core/words/types.ts';

/** What one pixel covers, from thousandths of a millimetre to kilometres. */
export function formatPixel(metresPerPixel: number, f: Figures): string {
  if (metresPerPixel >= 100) return f.length(metresPerPixel);
  if (metresPerPixel >= 0.1) return f.tape(metresPerPixel);
  const { underMm, mm } = f.words.window.background;
  const millimetres = metresPerPixel * 1000;
  const least = 0.001;
  if (millimetres < least) return underMm({ mm: least });
  return mm({ mm: millimetres, decimals: millimetres < 1 ? 3 : 1 });
}
