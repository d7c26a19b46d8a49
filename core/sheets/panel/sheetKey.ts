import type { Item, PaperBox, PaperPoint } from '../../drawing/displayList.ts';
import { box, stroke, text } from '../../drawing/paint.ts';
import { ink, letters, pen } from '../../drawing/style.ts';
import { boxAround } from '../../geometry/box.ts';
import type { Xy } from '../../geometry/types.ts';
import type { Block } from '../flow/block.ts';
import type { SheetTile } from '../sheetPlan.ts';

const mostHighMm = 24;

/** A small plan of the set with this sheet marked. */
export function sheetKey(tiles: readonly SheetTile[], current: SheetTile, widthMm: number): Block {
  const ground = boxAround(
    tiles.flatMap(({ ground: [w, s, e, n] }): Xy[] => [
      [w, s],
      [e, n],
    ]),
  )!;
  const scale = Math.min(widthMm / (ground[2] - ground[0]), mostHighMm / (ground[3] - ground[1]));
  const heightMm = (ground[3] - ground[1]) * scale;
  return {
    heightMm: heightMm + 2,
    paint: ([x, y]) =>
      tiles.flatMap((tile) =>
        tileBox(tile, tile === current, ([gx, gy]) => [x + (gx - ground[0]) * scale, y + (ground[3] - gy) * scale]),
      ),
  };
}

function tileBox(
  { ground: [west, south, east, north], number }: SheetTile,
  marked: boolean,
  toPaper: (xy: Xy) => PaperPoint,
): Item[] {
  const [left, top] = toPaper([west, north]);
  const [right, bottom] = toPaper([east, south]);
  const outline: PaperBox = [left, top, right, bottom];
  const middle: PaperPoint = [(left + right) / 2, (top + bottom) / 2 + 0.8];
  const size = Math.min(letters.panel, (bottom - top) * 1.6, (right - left) * 1.4);
  return [
    box(outline, null, stroke(marked ? 0.5 : pen.hairline)),
    ...(size >= 3
      ? [
          text(String(number), middle, {
            sizePt: size,
            align: 'centre',
            font: marked ? 'bold' : 'regular',
            ink: ink.black,
          }),
        ]
      : []),
  ];
}
