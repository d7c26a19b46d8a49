import { nearestOnPolyline } from '../../geometry/plane/nearestOnPolyline.ts';
import { nearestOnSegment } from '../../geometry/plane/nearestOnSegment.ts';
import type { Xy } from '../../geometry/types.ts';
import { joinGap } from '../../model/edits/joinGap.ts';
import { called } from '../../model/edits/support/find.ts';
import type { LineEnd } from '../../model/things.ts';
import type { LineShape } from '../../registers/types.ts';
import type { Check } from '../support/context.ts';
import { finding, headed } from '../support/make.ts';
import type { WireIndex } from '../support/wireIndex.ts';

/** An end nearer than this to another line was probably meant to touch it; an assumption of this project. */
const nearM = 3;

/** An end of a live line that stops just short of another live line and joins nothing. */
export const endNearlyTouches: Check = ({ survey, wires, property, say }) => {
  const findings = [];
  for (const shape of survey.lines.values()) {
    const { line, xy } = shape;
    if (!line.live || shape.closed || xy.length < 2) continue;
    for (const end of ['start', 'end'] as const) {
      const near = nearestOther(wires, shape, end, property.snapToleranceM);
      if (!near) continue;
      findings.push(
        finding('endNearlyTouches', 'warning', [line.id, near.other.line.id], {
          message: `${headed(line)} ends ${say(near.gapM)} short of ${called(near.other.line)} and is not joined to it.`,
          remedy: 'Join it if the wires are joined; otherwise draw the gap wider.',
          at: line.path.at(end === 'start' ? 0 : -1) ?? null,
          fixes: [
            {
              label: 'Move the end onto the line',
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
  const point: Xy = end === 'start' ? shape.xy[0]! : shape.xy.at(-1)!;
  let nearest: Near | null = null;
  for (const found of wires.search([...point, ...point], nearM)) {
    const { wire, segment } = wires.segments[found]!;
    if (!wire.shape || wire.shape === shape) continue;
    const there = nearestOnSegment(point, wire.xy[segment]!, wire.xy[segment + 1]!);
    const gapM = there.distanceM;
    if (gapM <= toleranceM) return null;
    if (gapM > nearM || gapM >= (nearest?.gapM ?? Infinity)) continue;
    // A line that meets this one just before its end is joined to it already.
    if (nearestOnPolyline(there.point, shape.xy)!.distanceM > toleranceM) nearest = { other: wire.shape, gapM };
  }
  return nearest;
}
