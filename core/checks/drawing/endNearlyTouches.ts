import type { Xy } from '../../geometry/types.ts';
import { joinGap } from '../../model/edits/joinGap.ts';
import { keptForPair } from '../../model/memo.ts';
import { refTo } from '../../model/refTo.ts';
import type { LineEnd } from '../../model/things.ts';
import type { LineShape } from '../../shapes/types.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';
import { nearestWithin } from '../support/segmentIndex.ts';
import type { WireIndex } from '../support/wireIndex.ts';

/** An end nearer than this to another line was probably meant to touch it; an assumption of this project. */
const nearM = 3;

/** An end of a live line that stops just short of another live line and joins nothing. */
export const endNearlyTouches: Check = ({ survey, wires, property }) => {
  const findings = [];
  for (const shape of survey.lines.values()) {
    const { line, xy } = shape;
    if (!line.live || shape.closed || xy.length < 2) continue;
    for (const end of ['start', 'end'] as const) {
      const near = nearestOther(wires, shape, end, property.snapToleranceM);
      if (!near) continue;
      findings.push(
        finding('endNearlyTouches', 'warning', [line.id, near.other.line.id], {
          message: message('checks.endNearlyTouches.message', {
            thing: refTo(line),
            other: refTo(near.other.line),
            gapM: near.gapM,
          }),
          remedy: message('checks.endNearlyTouches.remedy'),
          at: line.path.at(end === 'start' ? 0 : -1) ?? null,
          fixes: [
            {
              label: message('checks.endNearlyTouches.fix'),
              edit: joinGap({ lineId: line.id, end, toLineId: near.other.line.id }),
            },
          ],
          part: end,
        }),
      );
    }
  }
  return findings;
};

interface Near {
  readonly other: LineShape;
  readonly gapM: number;
}

/** Null where nothing is near, or where the end is joined to something already. */
function nearestOther(wires: WireIndex, shape: LineShape, end: LineEnd, toleranceM: number): Near | null {
  const point = end === 'start' ? shape.xy[0]! : shape.xy.at(-1)!;
  let nearest: Near | null = null;
  for (const found of wires.search([...point, ...point], nearM)) {
    const other = wires.wires[found]!.shape;
    if (!other || other === shape) continue;
    const gap = endGaps(shape.xy, other.xy, toleranceM)[end];
    if (gap === 'joined') return null;
    if (gap !== null && gap < (nearest?.gapM ?? Infinity)) nearest = { other, gapM: gap };
  }
  return nearest;
}

/** How far each end of a path is from another: joined, metres, or null where that is no near miss. */
type EndGaps = Readonly<Record<LineEnd, number | 'joined' | null>>;

const endGaps = keptForPair((path: readonly Xy[], other: readonly Xy[], toleranceM: number): EndGaps => {
  return { start: gapAt(path[0]!, path, other, toleranceM), end: gapAt(path.at(-1)!, path, other, toleranceM) };
});

function gapAt(point: Xy, path: readonly Xy[], other: readonly Xy[], toleranceM: number): number | 'joined' | null {
  const near = nearestWithin(other, point, nearM);
  if (!near) return null;
  if (near.distanceM <= toleranceM) return 'joined';
  // A line that meets this one just before its end is joined to it already.
  return nearestWithin(path, near.point, toleranceM) ? null : near.distanceM;
}
