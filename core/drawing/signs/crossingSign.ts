import type { Crossing } from '../../model/things.ts';
import type { Item, PaperPoint } from '../displayList.ts';
import { circle, line, stroke } from '../paint.ts';
import { ink } from '../style.ts';
import { boxAroundPaper, boxesAlong, type OpenSign, type Sign, squareAround } from './sign.ts';

type CrossingLook = Pick<Crossing, 'method' | 'status'>;

const trenchDashMm = [0.75, 0.4] as const;

/** Under a gateway: the trench dashed along its path. Over it: a line with a ring in its middle. */
export function crossingSign(path: readonly PaperPoint[], { method, status }: CrossingLook): OpenSign {
  const widthMm = penOf(status);
  const first = path[0];
  const last = path.at(-1);
  if (!first || !last) return { items: [], covers: [0, 0, 0, 0], parts: [] };
  const items: Item[] =
    method === 'buried'
      ? [line(path, stroke(widthMm, { dashMm: trenchDashMm }))]
      : [line([first, last], stroke(widthMm)), circle(middle(first, last), 0.5, ink.white, stroke(widthMm))];
  return { items, covers: boxAroundPaper(path, 0.2), parts: boxesAlong([path], 0.2) };
}

const spotRadiusMm = 0.6;

/** A place where the trench may also lie: a ring in the dashes of its courses. */
export function spotSign(at: PaperPoint, { status }: Pick<CrossingLook, 'status'>): Sign {
  return {
    items: [circle(at, spotRadiusMm, null, stroke(penOf(status), { dashMm: trenchDashMm }))],
    covers: squareAround(at, spotRadiusMm + 0.2),
  };
}

function penOf(status: CrossingLook['status']): number {
  return status === 'built' ? 0.38 : 0.18;
}

function middle(a: PaperPoint, b: PaperPoint): PaperPoint {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}
