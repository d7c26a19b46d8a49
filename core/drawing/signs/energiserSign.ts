import type { Status } from '../../model/things.ts';
import type { Item, PaperPoint } from '../displayList.ts';
import { circle, line, stroke } from '../paint.ts';
import { ink } from '../style.ts';
import { type Sign, squareAround } from './sign.ts';

export const energiserRadiusMm = 2;

/** An energiser: the ring of a source with the pulse in it, both from IEC 60617. Built: filled. */
export function energiserSign([x, y]: PaperPoint, status: Status): Sign {
  const built = status === 'built';
  const pulse: PaperPoint[] = [
    [x - 1.2, y + 0.65],
    [x - 0.42, y + 0.65],
    [x - 0.42, y - 0.7],
    [x + 0.42, y - 0.7],
    [x + 0.42, y + 0.65],
    [x + 1.2, y + 0.65],
  ];
  const items: Item[] = [
    circle([x, y], energiserRadiusMm, built ? ink.black : ink.white, stroke(0.2)),
    line(pulse, stroke(0.25, { ink: built ? ink.white : ink.black })),
  ];
  return { items, covers: squareAround([x, y], energiserRadiusMm + 0.3) };
}
