import { placeLabels } from '../labels/placeLabels.ts';
import type { Px } from '../plane/view.ts';
import type { Part } from '../scene/parts.ts';
import { labelWishes, type MapLabel } from './labelWishes.ts';
import type { Look } from './look.ts';
import { labelSizePx, mapFont } from './mapFont.ts';

/** Names, depths and letters, each where it covers no other. */
export function* paintLabels(look: Look, parts: readonly Part[]): Generator<void> {
  const { ctx } = look;
  ctx.font = mapFont();
  const placed = placeLabels(labelWishes(look, parts).filter((wish) => isSeen(look, wish)));
  yield;
  for (const [i, { wish, centre }] of placed.entries()) {
    ctx.font = mapFont(wish.style === 'letter' ? 700 : 400);
    ctx.textAlign = 'center';
    ctx.textBaseline = 'middle';
    ctx.lineJoin = 'round';
    if (wish.style === 'letter') paintLetter(look, wish, centre);
    else paintText(look, wish, centre);
    if (i % 60 === 59) yield;
  }
}

function isSeen({ view }: Look, { places }: MapLabel): boolean {
  const [x, y] = places[0] ?? [-1, -1];
  return x > 0 && y > 0 && x < view.widthPx && y < view.heightPx;
}

function paintText({ ctx, palette }: Look, { text, style }: MapLabel, [x, y]: Px): void {
  const lines = text.split('\n');
  for (const [i, line] of lines.entries()) {
    const lineY = y + (i - (lines.length - 1) / 2) * (labelSizePx + 3);
    ctx.strokeStyle = palette.paper;
    ctx.lineWidth = 4;
    ctx.strokeText(line, x, lineY);
    ctx.fillStyle = style === 'soft' ? palette.inkSoft : palette.ink;
    ctx.fillText(line, x, lineY);
  }
}

function paintLetter({ ctx, palette }: Look, { text, widthPx }: MapLabel, [x, y]: Px): void {
  ctx.beginPath();
  ctx.roundRect(x - widthPx / 2, y - 11, widthPx, 22, 11);
  ctx.fillStyle = palette.paper;
  ctx.fill();
  ctx.strokeStyle = palette.ink;
  ctx.lineWidth = 1.6;
  ctx.stroke();
  ctx.fillStyle = palette.ink;
  ctx.fillText(text, x, y + 1);
}
