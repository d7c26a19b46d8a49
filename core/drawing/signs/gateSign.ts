import type { Gateway } from '../../model/things.ts';
import type { Item, PaperPoint } from '../displayList.ts';
import { arcPoints, box, line, lines } from '../paint.ts';
import { type Pen, paperPen, penStroke } from '../pen.ts';
import { pen as pens } from '../style.ts';
import {
  boxAroundPaper,
  boxesAlong,
  type OpenSign,
  paperDirection,
  paperShift,
  type Sign,
  squareAround,
} from './sign.ts';

/** On paper an opening is shown at least this wide, so that it is seen on small scales too. */
export const leastOpeningMm = 2.4;
/** Narrower than this no leaf can be made out: see `farGateSign`. */
export const leastLeafMm = 1.5;
const postHalfMm = 0.4;

export type GateLook = Pick<Gateway, 'leaves' | 'hungFrom' | 'opens' | 'status'>;

/** How far the opening is drawn larger than it is: 1 from the scale on at which it is seen as it is. */
export function openingMagnified(startPost: PaperPoint, endPost: PaperPoint): number {
  const trueMm = Math.hypot(endPost[0] - startPost[0], endPost[1] - startPost[1]);
  return trueMm > 0 ? Math.max(1, leastOpeningMm / trueMm) : 1;
}

/** A point of a gateway as drawn: moved away from the opening's middle by the same factor as its posts. */
export function magnifiedAbout(middle: PaperPoint, [x, y]: PaperPoint, factor: number): PaperPoint {
  return [middle[0] + (x - middle[0]) * factor, middle[1] + (y - middle[1]) * factor];
}

/**
 * A gateway as in a plan drawing: a gap between two posts, each leaf standing open with the arc of its swing. Built:
 * filled posts and a strong leaf; planned: hollow posts and a thin one. An opening that is shown magnified is cleared of
 * the fence that would run into it.
 */
export function gateSign(
  startPost: PaperPoint,
  endPost: PaperPoint,
  look: GateLook,
  magnified: boolean,
  pen: Pen = paperPen,
): OpenSign {
  const { unit, inks } = pen;
  const u = paperDirection(startPost, endPost);
  const leaf = Math.hypot(endPost[0] - startPost[0], endPost[1] - startPost[1]) / look.leaves;
  const built = look.status === 'built';
  const left = look.opens === 'left' ? 1 : -1;
  const hinges: PaperPoint[] =
    look.leaves === 2 ? [startPost, endPost] : [look.hungFrom === 'start' ? startPost : endPost];
  const leaves = hinges.map((hinge) => [hinge, paperShift(hinge, u, 0, left * leaf)] as const);
  const arcs = hinges.map((hinge) => {
    const shut = Math.atan2(u[1], u[0]) + (hinge === startPost ? 0 : Math.PI);
    const turn = (hinge === startPost ? -1 : 1) * left * (Math.PI / 2);
    return arcPoints(hinge, leaf, shut, shut + turn, unit);
  });
  const postPen = penStroke(pen, pens.sign);
  const posts = [startPost, endPost].map((post) =>
    box(squareAround(post, postHalfMm * unit), built ? inks.ink : inks.paper, postPen),
  );
  const items: Item[] = [
    ...(magnified ? [line([startPost, endPost], penStroke(pen, 1.9, { ink: inks.paper }))] : []),
    lines(arcs, penStroke(pen, pens.hairline)),
    lines(leaves, penStroke(pen, built ? 0.4 : pens.sign)),
    ...posts,
  ];
  const covers = boxAroundPaper([startPost, endPost, ...arcs.flat()], (postHalfMm + 0.2) * unit);
  return { items, covers, parts: boxesAlong([...arcs, ...leaves], postHalfMm * unit, 3 * unit) };
}

/**
 * A gateway from so far off that its leaves cannot be made out and hundreds are in view: a gap in the fence between two
 * bars across it. Paper shows no gateway from so far off; see `leastOpeningMm`.
 */
export function farGateSign(startPost: PaperPoint, endPost: PaperPoint, { status }: GateLook, pen: Pen): Sign {
  const { unit, inks } = pen;
  const u = paperDirection(startPost, endPost);
  const middle: PaperPoint = [(startPost[0] + endPost[0]) / 2, (startPost[1] + endPost[1]) / 2];
  const width = Math.hypot(endPost[0] - startPost[0], endPost[1] - startPost[1]);
  const gap = Math.max(width / 2, 0.4 * unit);
  const reach = 0.95 * unit;
  const bars = [-gap, gap].map((along): PaperPoint[] => [
    paperShift(middle, u, along, reach),
    paperShift(middle, u, along, -reach),
  ]);
  return {
    items: [
      line([paperShift(middle, u, -gap), paperShift(middle, u, gap)], penStroke(pen, 0.8, { ink: inks.paper })),
      lines(bars, penStroke(pen, status === 'built' ? 0.27 : pens.thin)),
    ],
    covers: squareAround(middle, gap + reach),
  };
}
