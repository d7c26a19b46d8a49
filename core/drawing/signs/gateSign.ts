import type { Gateway } from '../../model/things.ts';
import type { Item, PaperPoint } from '../displayList.ts';
import { arcPoints, box, line, lines, stroke } from '../paint.ts';
import { ink, pen } from '../style.ts';
import { boxAroundPaper, boxesAlong, type OpenSign, paperDirection, paperShift, squareAround } from './sign.ts';

/** An opening is shown at least this wide, so that it is seen on small scales too. */
export const leastOpeningMm = 2.4;
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
export function gateSign(startPost: PaperPoint, endPost: PaperPoint, look: GateLook, magnified: boolean): OpenSign {
  const u = paperDirection(startPost, endPost);
  const widthMm = Math.hypot(endPost[0] - startPost[0], endPost[1] - startPost[1]);
  const leafMm = widthMm / look.leaves;
  const built = look.status === 'built';
  const left = look.opens === 'left' ? 1 : -1;
  const hinges: PaperPoint[] =
    look.leaves === 2 ? [startPost, endPost] : [look.hungFrom === 'start' ? startPost : endPost];
  const leaves = hinges.map((hinge) => [hinge, paperShift(hinge, u, 0, left * leafMm)] as const);
  const arcs = hinges.map((hinge) => {
    const shut = Math.atan2(u[1], u[0]) + (hinge === startPost ? 0 : Math.PI);
    const turn = (hinge === startPost ? -1 : 1) * left * (Math.PI / 2);
    return arcPoints(hinge, leafMm, shut, shut + turn);
  });
  const postPen = stroke(pen.sign);
  const posts = [startPost, endPost].map((post) =>
    box(squareAround(post, postHalfMm), built ? ink.black : ink.white, postPen),
  );
  const items: Item[] = [
    ...(magnified ? [line([startPost, endPost], stroke(1.9, { ink: ink.white }))] : []),
    lines(arcs, stroke(pen.hairline)),
    lines(leaves, stroke(built ? 0.4 : pen.sign)),
    ...posts,
  ];
  const covers = boxAroundPaper([startPost, endPost, ...arcs.flat()], postHalfMm + 0.2);
  return { items, covers, parts: boxesAlong([...arcs, ...leaves], postHalfMm) };
}
