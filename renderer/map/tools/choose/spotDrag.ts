import type { LonLat, Xy } from '../../../../core/geometry/types.ts';
import { movePathVertex } from '../../../../core/model/edits/movePathVertex.ts';
import { moveThing, type PointKind } from '../../../../core/model/edits/moveThing.ts';
import { drawHaloAt, drawHandle, drawRubber, drawSnapCue } from '../../interaction/cues.ts';
import { atSpot, type SnapTarget } from '../../interaction/snapping.ts';
import { toPx } from '../../plane/view.ts';
import type { LeadOutPart, ServicePart } from '../../scene/parts.ts';
import { noProgress, type PaintTools, type ToolContext } from '../tool.ts';
import type { Drag } from './drag.ts';

/** Moves a thing that stands at one point: a post, an energiser, an earth field. */
export function dragThing(
  context: ToolContext,
  { kind, id, name }: { kind: PointKind; id: string; name: string },
): Drag {
  const words = context.words().choose;
  const thing = { kind, name };
  const isField = kind === 'earthField';
  const label = isField ? words.moveEarthField : words.moveThing({ thing });
  return dragSpot(
    context,
    isField ? words.dropEarthField : words.dropThing({ thing }),
    (to) => context.commit({ label, apply: moveThing({ kind, id, to }) }),
    (tools, xy) => drawHaloAt(tools, xy, 14),
  );
}

/** Moves a bend or an end of a lead-out or a service. */
export function dragPathVertex(context: ToolContext, part: LeadOutPart | ServicePart, index: number): Drag {
  const thing = part.kind === 'leadOut' ? part.leadOut : part.service;
  const { kind, id, name } = thing;
  const words = context.words().choose;
  const sides = [part.xy[index - 1], part.xy[index + 1]].filter((side) => side !== undefined);
  return dragSpot(
    context,
    words.dropBend,
    (to) => context.commit({ label: words.moveBend({ name }), apply: movePathVertex({ kind, id, index, to }) }),
    (tools, xy) => {
      for (const side of sides) drawRubber(tools, [side, xy], false);
      drawHandle(tools, toPx(tools.view, xy), 'corner', true);
    },
  );
}

function dragSpot(
  context: ToolContext,
  hint: string,
  commit: (to: LonLat) => Promise<boolean>,
  paint: (tools: PaintTools, xy: Xy) => void,
): Drag {
  let at: { readonly xy: Xy; readonly lonLat: LonLat; readonly snap: SnapTarget | null } | null = null;
  return {
    hint,
    move(pointer) {
      const snap = context.snap(pointer);
      at = snap ? { ...snap, snap } : { xy: pointer.xy, lonLat: context.toLonLat(pointer.xy), snap: null };
    },
    progress: () => ({ ...noProgress, snappedTo: atSpot(at?.snap) }),
    drop: async () => (at ? commit(at.lonLat) : false),
    paint(tools) {
      if (!at) return;
      paint(tools, at.xy);
      if (at.snap) drawSnapCue(tools, at.snap);
    },
  };
}
