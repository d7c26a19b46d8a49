import type { Item, PaperPoint } from '../displayList.ts';
import { circle, line, lines } from '../paint.ts';
import { type Pen, paperPen, penStroke } from '../pen.ts';
import { buriedDashMm } from '../strokes/buried.ts';
import { marksAlong } from '../strokes/marksAlong.ts';
import { type Sign, squareAround } from './sign.ts';

const crossSpacingMm = 5;
const crossMm = 0.7;
export const inGroundReachMm = 1.2;

/** The ways that something left in the ground may lie: dashed, and crossed where it is dead. */
export function inGroundLine(pieces: readonly (readonly PaperPoint[])[], dead: boolean, pen: Pen = paperPen): Item[] {
  if (pieces.length === 0) return [];
  const stroke = penStroke(pen, 0.35, { dashMm: buriedDashMm });
  const items: Item[] = [
    ...(pen.rim > 0 ? [lines(pieces, { width: stroke.width + 2 * pen.rim, ink: pen.inks.paper })] : []),
    lines(pieces, stroke),
  ];
  if (!dead) return items;
  const places = pieces.flatMap((piece) => marksAlong(piece, crossSpacingMm * pen.unit));
  const strokes = places.flatMap(({ at }) => cross(at, crossMm * pen.unit));
  return strokes.length > 0 ? [...items, lines(strokes, penStroke(pen, 0.25))] : items;
}

/** A disc with a cross (dead) or an upright stroke over a point (may be live). */
export function inGroundSign(at: PaperPoint, dead: boolean, pen: Pen = paperPen): Sign {
  const { unit, inks } = pen;
  const disc = circle(at, inGroundReachMm * unit, inks.paper, penStroke(pen, 0.25));
  const covers = squareAround(at, inGroundReachMm * unit);
  if (dead) return { items: [disc, lines(cross(at, inGroundReachMm * 0.55 * unit), penStroke(pen, 0.25))], covers };
  const [x, y] = at;
  const mark: PaperPoint[] = [
    [x, y - inGroundReachMm * 0.65 * unit],
    [x, y + inGroundReachMm * 0.15 * unit],
  ];
  return {
    items: [
      disc,
      line(mark, penStroke(pen, 0.3)),
      circle([x, y + inGroundReachMm * 0.55 * unit], 0.15 * unit, inks.ink),
    ],
    covers,
  };
}

function cross([x, y]: PaperPoint, reach: number): PaperPoint[][] {
  return [
    [
      [x - reach, y - reach],
      [x + reach, y + reach],
    ],
    [
      [x - reach, y + reach],
      [x + reach, y - reach],
    ],
  ];
}
