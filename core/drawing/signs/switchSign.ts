import type { CutOutSwitch } from '../../model/things.ts';
import type { Item, PaperPoint } from '../displayList.ts';
import { circle, lines, stroke } from '../paint.ts';
import { ink, pen } from '../style.ts';
import { paperShift, type Sign, squareAround } from './sign.ts';

export const switchRadiusMm = 1.75;
const contactMm = 0.85;
const openAngle = Math.PI / 6;

/**
 * A cut-out switch: the contact sign of IEC 60617 in a ring, its blade hinged on the supply side; lying on the far
 * contact when it stands closed, lifted by 30 degrees when it stands open. Built: filled contacts and a strong ring.
 * `along` is the direction from the supply side to the far side.
 */
export function switchSign(
  at: PaperPoint,
  along: PaperPoint,
  { normally, status }: Pick<CutOutSwitch, 'normally' | 'status'>,
): Sign {
  const built = status === 'built';
  const supply = paperShift(at, along, -contactMm);
  const far = paperShift(at, along, contactMm);
  const bladeMm = 2 * contactMm;
  const tip =
    normally === 'open' ? paperShift(supply, along, bladeMm * Math.cos(openAngle), bladeMm * Math.sin(openAngle)) : far;
  const leads: PaperPoint[][] = [
    [paperShift(at, along, -switchRadiusMm), supply],
    [far, paperShift(at, along, switchRadiusMm)],
  ];
  const contact = (point: PaperPoint) => circle(point, 0.28, built ? ink.black : ink.white, stroke(pen.thin));
  const items: Item[] = [
    circle(at, switchRadiusMm, ink.white, stroke(built ? 0.32 : 0.13)),
    lines(leads, stroke(pen.sign)),
    lines([[supply, tip]], stroke(pen.sign * 1.5)),
    contact(supply),
    contact(far),
  ];
  return { items, covers: squareAround(at, switchRadiusMm + 0.2) };
}
