import type { Ctx } from '../signs/pen.ts';

const widths = new Map<string, number>();

/** Width of a text in the context's present font, pixels; measured once. */
export function textWidthPx(ctx: Ctx, text: string): number {
  const key = `${ctx.font}|${text}`;
  let width = widths.get(key);
  if (width === undefined) {
    width = ctx.measureText(text).width;
    if (widths.size > 20_000) widths.clear();
    widths.set(key, width);
  }
  return width;
}

/** The faces load after the first picture; widths measured before are then wrong. */
export function forgetTextWidths(): void {
  widths.clear();
}
