import type { PaperBox, PaperPoint } from '../displayList.ts';
import type { LabelPlace } from './label.ts';
import { type LabelBlock, middleOf } from './labelBlock.ts';

const gapMm = 0.45;
const nearCosts = [
  { dx: 1, dy: 0, cost: 0 },
  { dx: 0, dy: -1, cost: 0.1 },
  { dx: -1, dy: 0, cost: 0.2 },
  { dx: 0, dy: 1, cost: 0.3 },
  { dx: 1, dy: -1, cost: 0.4 },
  { dx: -1, dy: -1, cost: 0.5 },
  { dx: 1, dy: 1, cost: 0.5 },
  { dx: -1, dy: 1, cost: 0.6 },
] as const;
const leaderReachMm = [2.5, 5, 9, 14];
const leaderAngles = Array.from({ length: 12 }, (_, i) => (i * Math.PI) / 6);

/** Places for a label about a sign: the eight that touch it, then, with a leader, rings further out. */
export function placesAround(sign: PaperBox, block: LabelBlock): LabelPlace[] {
  const middle = middleOf(sign);
  const half: PaperPoint = [(sign[2] - sign[0]) / 2, (sign[3] - sign[1]) / 2];
  const beside = nearCosts.map(({ dx, dy, cost }): LabelPlace => {
    // Diagonal places tuck in a little under the corner.
    const tuck = dx !== 0 && dy !== 0 ? 0.75 : 1;
    const x = middle[0] + dx * (half[0] * tuck + gapMm + block.widthMm / 2);
    const y = middle[1] + dy * (half[1] * tuck + gapMm + block.heightMm / 2);
    return { texts: block.centredAt([x, y]), leader: null, cost };
  });
  const away = leaderReachMm.flatMap((reach) => leaderAngles.map((angle) => withLeader(sign, block, reach, angle)));
  return [...beside, ...away];
}

function withLeader(sign: PaperBox, block: LabelBlock, reachMm: number, angle: number): LabelPlace {
  const middle = middleOf(sign);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const signRadius = reachOfBox(sign, cos, sin) + 0.25;
  const from: PaperPoint = [middle[0] + cos * signRadius, middle[1] + sin * signRadius];
  const to: PaperPoint = [middle[0] + cos * (signRadius + reachMm), middle[1] + sin * (signRadius + reachMm)];
  const centre: PaperPoint = [
    to[0] + (cos * block.widthMm) / 2 + Math.sign(Math.round(cos * 100)) * 0.5,
    to[1] + (sin * block.heightMm) / 2 + Math.sign(Math.round(sin * 100)) * 0.2,
  ];
  return { texts: block.centredAt(centre), leader: [from, to], cost: 1.5 + reachMm * 0.25 };
}

/** How far a box reaches from its middle in a direction. */
function reachOfBox([left, top, right, bottom]: PaperBox, cos: number, sin: number): number {
  const across = cos === 0 ? Infinity : (right - left) / 2 / Math.abs(cos);
  const down = sin === 0 ? Infinity : (bottom - top) / 2 / Math.abs(sin);
  return Math.min(across, down);
}
