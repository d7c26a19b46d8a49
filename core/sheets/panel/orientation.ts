import { text } from '../../drawing/paint.ts';
import { northArrow } from '../../drawing/signs/northArrow.ts';
import { drawScaleBar, scaleBarFor } from '../../drawing/signs/scaleBar.ts';
import { ink, letters } from '../../drawing/style.ts';
import type { Figures } from '../../words/types.ts';
import type { Block } from '../flow/block.ts';
import { scaleText } from '../scales.ts';

/** North arrow, scale in figures, and the bar that shows whether the print is true. */
export function orientationBlock(scaleDenominator: number, paper: string, f: Figures, widthMm: number): Block {
  const bar = scaleBarFor(scaleDenominator, f.units, widthMm - 16.5);
  const said = f.words.sheets.map.panel;
  return {
    heightMm: 18,
    paint: ([x, y]) => [
      ...northArrow([x + 4, y + 16]),
      text(said.scaleHeading({ scale: scaleText(scaleDenominator), paper }), [x + 12, y + 3.6], {
        sizePt: letters.body,
        font: 'bold',
      }),
      ...drawScaleBar(bar, [x + 12, y + 8.8]),
      text(said.bar({ lengthMm: bar.length }), [x + 12, y + 14.6], { sizePt: letters.small, ink: ink.soft }),
    ],
  };
}
