import type { Ctx } from '../signs/pen.ts';
import { mapFont } from './mapFont.ts';

const widths = new Map<string, number>();

/** Width of a text in the map's ordinary face, pixels; measured once. Leaves that face set where it had to measure. */
export function textWidthPx(ctx: Ctx, text: string): number {
  let width = widths.get(text);
  if (width === undefined) {
    ctx.font = mapFont();
    width = ctx.measureText(text).width;
    if (widths.size > 20_000) widths.clear();
    widths.set(text, width);
  }
  return width;
}

/** The faces load after the first picture; widths measured before are then wrong. */
export function forgetTextWidths(): void {
  widths.clear();
}
