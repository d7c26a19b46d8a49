import { pointInRing } from '../../geometry/ring.ts';
import type { PaperBox, PaperPoint } from '../displayList.ts';
import { boxAroundPaper } from '../signs/sign.ts';
import type { LabelPlace } from './label.ts';
import type { LabelBlock } from './labelBlock.ts';

const steps = 9;

/**
 * Places for a label inside an area: a net of points within it, those near its heart first (`heart`, or the middle of
 * what the map shows of it). Of several blocks the later ones are makeshifts.
 */
export function placesInside(
  ring: readonly PaperPoint[],
  heart: PaperPoint | null,
  frame: PaperBox,
  blocks: readonly LabelBlock[],
): LabelPlace[] {
  const box = boxAroundPaper(ring, 0);
  const shown: PaperBox = [
    Math.max(box[0], frame[0]),
    Math.max(box[1], frame[1]),
    Math.min(box[2], frame[2]),
    Math.min(box[3], frame[3]),
  ];
  const [widthMm, heightMm] = [shown[2] - shown[0], shown[3] - shown[1]];
  if (widthMm <= 0 || heightMm <= 0) return [];
  const middle = heart ?? [(shown[0] + shown[2]) / 2, (shown[1] + shown[3]) / 2];
  const net: PaperPoint[] = [middle];
  for (let i = 0; i < steps; i++) {
    for (let k = 0; k < steps; k++) {
      net.push([shown[0] + (widthMm * (i + 0.5)) / steps, shown[1] + (heightMm * (k + 0.5)) / steps]);
    }
  }
  const inside = net.filter((point) => pointInRing(point, ring));
  return blocks.flatMap((block, makeshift) =>
    inside
      .filter((point) => fitsInside(point, block.widthMm, block.heightMm, ring))
      .map(([x, y]): LabelPlace => {
        const away = Math.hypot(x - middle[0], y - middle[1]);
        return { texts: block.centredAt([x, y]), leader: null, cost: away * 0.08 + makeshift * 1.5 };
      }),
  );
}

/** Whether a block about a point lies in the ring by its corners, so that the name does not run over into the neighbour's. */
export function fitsInside([x, y]: PaperPoint, width: number, height: number, ring: readonly PaperPoint[]): boolean {
  const [w, h] = [width / 2, height / 2];
  return [-w, 0, w].every((dx) => pointInRing([x + dx, y - h], ring) && pointInRing([x + dx, y + h], ring));
}
