import type { Crossing } from '../../model/things.ts';
import type { Item, PaperPoint } from '../displayList.ts';
import { circle, line } from '../paint.ts';
import { type Pen, paperPen, penStroke } from '../pen.ts';
import { boxAroundPaper, boxesAlong, type OpenSign, type Sign, squareAround } from './sign.ts';

type CrossingLook = Pick<Crossing, 'method' | 'status'>;

const trenchDashMm = [0.75, 0.4] as const;

/** Under a gateway: the trench dashed along its path. Over it: a line with a ring in its middle. */
export function crossingSign(
  path: readonly PaperPoint[],
  { method, status }: CrossingLook,
  pen: Pen = paperPen,
): OpenSign {
  const { unit, inks } = pen;
  const widthMm = weightOf(status);
  const first = path[0];
  const last = path.at(-1);
  if (!first || !last) return { items: [], covers: [0, 0, 0, 0], parts: [] };
  const buried = method === 'buried';
  const course = buried ? path : [first, last];
  const stroke = penStroke(pen, widthMm, buried ? { dashMm: trenchDashMm } : {});
  const items: Item[] = [
    ...(pen.rim > 0 ? [line(course, { width: stroke.width + 2 * pen.rim, ink: inks.paper })] : []),
    line(course, stroke),
    ...(buried ? [] : [circle(middle(first, last), 0.5 * unit, inks.paper, penStroke(pen, widthMm))]),
  ];
  return { items, covers: boxAroundPaper(path, 0.2 * unit), parts: boxesAlong([path], 0.2 * unit, 3 * unit) };
}

const spotRadiusMm = 0.6;

/** A place where the trench may also lie: a ring in the dashes of its courses. */
export function spotSign(at: PaperPoint, { status }: Pick<CrossingLook, 'status'>, pen: Pen = paperPen): Sign {
  return {
    items: [circle(at, spotRadiusMm * pen.unit, null, penStroke(pen, weightOf(status), { dashMm: trenchDashMm }))],
    covers: squareAround(at, (spotRadiusMm + 0.2) * pen.unit),
  };
}

function weightOf(status: CrossingLook['status']): number {
  return status === 'built' ? 0.38 : 0.18;
}

function middle(a: PaperPoint, b: PaperPoint): PaperPoint {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}
