import { arcFigures, arcPath, bowThrough } from '../../../../core/geometry/arc.ts';
import { xyDistanceM } from '../../../../core/geometry/vector.ts';
import { setCrossing } from '../../../../core/model/edits/setCrossing.ts';
import type { CrossingFigures, GatewayShape } from '../../../../core/shapes/types.ts';
import { drawHandle, drawRubber, drawTag } from '../../interaction/cues.ts';
import { toPx } from '../../plane/view.ts';
import { noProgress, type ToolContext } from '../tool.ts';
import type { Drag } from './drag.ts';

/** A trench is dug to the centimetre at best, so the bow is kept to one. */
const stepM = 0.01;

/** Bows the trench of a crossing out, to either side. */
export function dragBow(context: ToolContext, figures: CrossingFigures, shape: GatewayShape): Drag {
  const { startPost, endPost, gateway } = shape;
  const chordM = xyDistanceM(startPost, endPost);
  let bowM: number | null = null;
  const path = () => arcPath(startPost, endPost, bowM ?? 0);
  return {
    hint: context.words().choose.dropCurve,
    move(pointer) {
      bowM = Math.round(bowThrough(startPost, endPost, pointer.xy) / stepM) * stepM;
    },
    progress: () => ({ ...noProgress, lengthM: bowM === null ? null : arcFigures(chordM, bowM).lengthM }),
    async drop() {
      if (bowM === null) return false;
      const to = { bowM: Math.abs(bowM), bowSide: bowM < 0 ? ('right' as const) : ('left' as const) };
      const apply = setCrossing({ gatewayId: gateway.id, to }, () => figures.crossing.id);
      return context.commit({ label: context.words().choose.curve({ name: gateway.name }), apply });
    },
    paint(tools) {
      if (bowM === null) return;
      const arc = path();
      drawRubber(tools, arc, true);
      const middle = toPx(tools.view, arc[Math.floor(arc.length / 2)]!);
      drawHandle(tools, middle, 'bow', true);
      // The words stand beyond the bow, off the trench.
      const chord = toPx(tools.view, shape.centre);
      const away = [middle[0] - chord[0], middle[1] - chord[1]] as const;
      const trenchM = arcFigures(chordM, bowM).lengthM;
      drawTag(
        tools.ctx,
        tools.palette,
        [middle[0], middle[1] + (away[1] > 0 ? 32 : -32)],
        context.words().choose.curveAndTrench({ bowM: Math.abs(bowM), trenchM }),
        'center',
      );
    },
  };
}
