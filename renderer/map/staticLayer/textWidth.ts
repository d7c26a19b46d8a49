import type { Ctx } from '../canvas/shapes.ts';
import type { TextWidth } from './look.ts';
import { mapFont } from './mapFont.ts';

const widths = new Map<string, number>();

/** Measures texts in the map's ordinary face, each once. Leaves that face set where it had to measure. */
export const textWidthOn =
  (ctx: Ctx): TextWidth =>
  (text) => {
    let width = widths.get(text);
    if (width === undefined) {
      ctx.font = mapFont();
      width = ctx.measureText(text).width;
      if (widths.size > 20_000) widths.clear();
      widths.set(text, width);
    }
    return width;
  };

/** The faces load after the first picture; widths measured before are then wrong. */
export function forgetTextWidths(): void {
  widths.clear();
}
