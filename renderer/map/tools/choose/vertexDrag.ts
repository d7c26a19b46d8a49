import type { LonLat, Xy } from '../../../../core/geometry/types.ts';
import { xyDistanceM } from '../../../../core/geometry/vector.ts';
import { insertVertex } from '../../../../core/model/edits/insertVertex.ts';
import { moveVertex } from '../../../../core/model/edits/moveVertex.ts';
import { propertyOf } from '../../../../core/model/project.ts';
import { pushAll } from '../../../../core/model/pushAll.ts';
import type { LineShape } from '../../../../core/shapes/types.ts';
import { formatLength } from '../../../../core/words/numbers/write.ts';
import { drawHandle, drawRubber, drawSegmentLength, drawSnapCue } from '../../interaction/cues.ts';
import { atSpot, type SnapTarget } from '../../interaction/snapping.ts';
import { toPx } from '../../plane/view.ts';
import type { Scene } from '../../scene/buildScene.ts';
import type { Pointer, ToolContext } from '../tool.ts';
import type { Drag } from './drag.ts';

/** Moves a corner of a line, with what is joined to it; with Ctrl held it comes apart. */
export function dragVertex(context: ToolContext, shape: LineShape, index: number): Drag {
  const { line, xy, closed } = shape;
  const last = xy.length - 1;
  const before = index > 0 ? index - 1 : closed ? last - 1 : null;
  const after = index < last ? index + 1 : closed ? 1 : null;
  const own = [before, after].filter((i) => i !== null).map((i) => ({ xy: xy[i]!, lonLat: line.path[i]! }));
  const joined = neighboursOfJoined(context.scene(), shape, index);
  return dragPoint(context, {
    own,
    along: joined,
    except: { lineId: line.id, vertex: index },
    hint: context.words().choose.dropCorner,
    commit: (to, pointer) =>
      context.commit({
        label: context.words().choose.moveCorner({ name: line.name }),
        apply: moveVertex({ lineId: line.id, index, to, alone: pointer.ctrl }),
      }),
  });
}

/** Pulls a new corner out of the middle of a segment. */
export function dragNewVertex(context: ToolContext, { line, xy }: LineShape, segment: number): Drag {
  const own = [segment, segment + 1].map((i) => ({ xy: xy[i]!, lonLat: line.path[i]! }));
  return dragPoint(context, {
    own,
    along: [],
    except: { lineId: line.id, vertex: -1 },
    hint: context.words().choose.dropNewCorner,
    commit: (at) =>
      context.commit({
        label: context.words().choose.putCorner({ name: line.name }),
        apply: insertVertex({ lineId: line.id, segment, at }),
      }),
  });
}

interface PointDrag {
  /** The ends of the segments that move, whose lengths are shown. */
  readonly own: readonly { readonly xy: Xy; readonly lonLat: LonLat }[];
  /** Ends of what comes along. */
  readonly along: readonly Xy[];
  readonly except: { readonly lineId: string; readonly vertex: number };
  readonly hint: string;
  readonly commit: (to: LonLat, pointer: Pointer) => Promise<boolean>;
}

function dragPoint(context: ToolContext, { own, along, except, hint, commit }: PointDrag): Drag {
  let at: { readonly xy: Xy; readonly lonLat: LonLat; readonly snap: SnapTarget | null } | null = null;
  let pointer: Pointer | null = null;
  const { earth } = context.scene().survey.plane;
  return {
    hint,
    move(next) {
      pointer = next;
      const snap = context.snap(next, except);
      at = snap
        ? { xy: snap.xy, lonLat: snap.lonLat, snap }
        : { xy: next.xy, lonLat: context.toLonLat(next.xy), snap: null };
    },
    progress() {
      const first = own[0];
      return {
        lengthM: at && first ? earth.distanceM(first.lonLat, at.lonLat) : null,
        bearingDeg: at && first ? earth.bearingDeg(first.lonLat, at.lonLat) : null,
        snappedTo: atSpot(at?.snap),
        totalM: null,
      };
    },
    drop: async () => (at && pointer ? commit(at.lonLat, pointer) : false),
    paint(tools) {
      if (!at) return;
      if (!pointer?.ctrl) for (const end of along) drawRubber(tools, [end, at.xy], true);
      for (const end of own) {
        drawRubber(tools, [end.xy, at.xy], false);
        const text = formatLength(earth.distanceM(end.lonLat, at.lonLat), context.input().units);
        drawSegmentLength(tools, end.xy, at.xy, text);
      }
      drawHandle(tools, toPx(tools.view, at.xy), 'corner', true);
      if (at.snap) drawSnapCue(tools, at.snap);
    },
  };
}

/** The far ends of the other lines' segments that meet at a corner. */
function neighboursOfJoined(scene: Scene, shape: LineShape, index: number): Xy[] {
  const toleranceM = propertyOf(scene.project).snapToleranceM;
  const [x, y] = shape.xy[index]!;
  const ends: Xy[] = [];
  const done = new Set<string>();
  for (const part of scene.search([x - toleranceM, y - toleranceM, x + toleranceM, y + toleranceM])) {
    if (part.kind !== 'piece' || part.id === shape.line.id || done.has(part.id)) continue;
    done.add(part.id);
    const path = part.shape.xy;
    for (const [i, vertex] of path.entries()) {
      if (xyDistanceM(vertex, [x, y]) > toleranceM) continue;
      pushAll(
        ends,
        [path[i - 1], path[i + 1]].filter((end) => end !== undefined),
      );
    }
  }
  return ends;
}
