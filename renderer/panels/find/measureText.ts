import type { FontRole } from '../../../core/drawing/displayList.ts';
import { mmPerPt } from '../../../core/drawing/style.ts';
import type { MeasureText } from '../../../core/drawing/words.ts';

const fontCss: Readonly<Record<FontRole, string>> = {
  regular: '100px "Atkinson Hyperlegible", sans-serif',
  figures: '100px "Atkinson Hyperlegible", sans-serif',
  bold: 'bold 100px "Atkinson Hyperlegible", sans-serif',
  italic: 'italic 100px "Atkinson Hyperlegible", sans-serif',
};

const ems = new Map<string, number>();
let pen: CanvasRenderingContext2D | null = null;

/** Width of a line of text as this window sets it, millimetres. */
export const measureText: MeasureText = (text, font, sizePt) => {
  const key = `${font} ${text}`;
  let em = ems.get(key);
  if (em === undefined) {
    pen ??= document.createElement('canvas').getContext('2d')!;
    pen.font = fontCss[font];
    em = pen.measureText(text).width / 100;
    if (ems.size > 5000) ems.clear();
    ems.set(key, em);
  }
  return em * sizePt * mmPerPt;
};
