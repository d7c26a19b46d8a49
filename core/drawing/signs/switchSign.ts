import type { CutOutSwitch } from '../../model/things.ts';
import type { Item, PaperPoint } from '../displayList.ts';
import { circle, circles, lines } from '../paint.ts';
import { type Pen, paperPen, penStroke } from '../pen.ts';
import { pen as pens } from '../style.ts';
import { paperShift, type Sign, squareAround } from './sign.ts';

export const switchRadiusMm = 1.75;
const contactMm = 0.85;

/** How far the blade of an open switch is lifted off its far contact. */
export const openDegrees = 30;
const openAngle = (openDegrees * Math.PI) / 180;

/**
 * A cut-out switch: the contact sign of IEC 60617 in a ring, its blade hinged on the supply side; lying on the far
 * contact when it stands closed, lifted by 30 degrees when it stands open. Built: filled contacts and a strong ring.
 * `along` is the direction from the supply side to the far side.
 */
export function switchSign(
  at: PaperPoint,
  along: PaperPoint,
  { normally, status }: Pick<CutOutSwitch, 'normally' | 'status'>,
  pen: Pen = paperPen,
): Sign {
  const { unit, inks } = pen;
  const built = status === 'built';
  const supply = paperShift(at, along, -contactMm * unit);
  const far = paperShift(at, along, contactMm * unit);
  const blade = 2 * contactMm * unit;
  const tip =
    normally === 'open' ? paperShift(supply, along, blade * Math.cos(openAngle), blade * Math.sin(openAngle)) : far;
  const leads: PaperPoint[][] = [
    [paperShift(at, along, -switchRadiusMm * unit), supply],
    [far, paperShift(at, along, switchRadiusMm * unit)],
  ];
  const items: Item[] = [
    circle(at, switchRadiusMm * unit, inks.paper, penStroke(pen, built ? 0.32 : 0.13)),
    lines(leads, penStroke(pen, pens.sign)),
    lines([[supply, tip]], penStroke(pen, pens.sign * 1.5)),
    circles([supply, far], 0.28 * unit, built ? inks.ink : inks.paper, penStroke(pen, pens.thin)),
  ];
  return { items, covers: squareAround(at, (switchRadiusMm + 0.2) * unit) };
}

/** A switch that the plan asks for and nobody has drawn yet: a dashed ring with a plus. */
export function suggestedSwitchSign([x, y]: PaperPoint, pen: Pen = paperPen): Sign {
  const { unit, inks } = pen;
  const [radius, arm] = [1.5 * unit, 0.75 * unit];
  const plus: PaperPoint[][] = [
    [
      [x - arm, y],
      [x + arm, y],
    ],
    [
      [x, y - arm],
      [x, y + arm],
    ],
  ];
  const items: Item[] = [
    circle([x, y], radius, inks.paper, penStroke(pen, 0.27, { ink: inks.accent, dashMm: [0.53, 0.4] })),
    lines(plus, penStroke(pen, 0.27, { ink: inks.accent })),
  ];
  return { items, covers: squareAround([x, y], radius + 0.2 * unit) };
}

/** Struck through: drawn, but the plan does without it. */
export function surplusMark([x, y]: PaperPoint, pen: Pen = paperPen): Item {
  const reach = switchRadiusMm * pen.unit;
  const stroke = penStroke(pen, 0.27, { ink: pen.inks.caution });
  return lines(
    [
      [
        [x - reach, y + reach],
        [x + reach, y - reach],
      ],
    ],
    stroke,
  );
}

/** A place where the user lets the plan set a switch: two short strokes across the fence, which runs `along`. */
export function switchPlaceSign(at: PaperPoint, along: PaperPoint, pen: Pen = paperPen): Sign {
  const { unit } = pen;
  const across: PaperPoint = [-along[1], along[0]];
  const strokes = [-0.4, 0.4].map((shift): PaperPoint[] => {
    const middle = paperShift(at, along, shift * unit);
    return [paperShift(middle, across, -1.1 * unit), paperShift(middle, across, 1.1 * unit)];
  });
  return { items: [lines(strokes, penStroke(pen, pens.sign))], covers: squareAround(at, 1.2 * unit) };
}
