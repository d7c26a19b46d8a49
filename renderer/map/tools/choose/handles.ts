import { pointAtStation } from '../../../../core/geometry/polyline.ts';
import type { Xy } from '../../../../core/geometry/types.ts';
import { between, xyDistanceM } from '../../../../core/geometry/vector.ts';
import { isInView } from '../../interaction/cues.ts';
import type { Workspace } from '../../mapTypes.ts';
import { toPx, type View } from '../../plane/view.ts';
import type { Part } from '../../scene/parts.ts';
import { switchSignXy } from '../../scene/switchSignXy.ts';
import { handleReachPx } from '../reach.ts';
import type { ToolContext } from '../tool.ts';
import { dragBow } from './bowDrag.ts';
import type { Drag } from './drag.ts';
import { dragGateway } from './gatewayDrag.ts';
import { dragPathVertex, dragThing } from './spotDrag.ts';
import { dragSwitch } from './switchDrag.ts';
import { dragNewVertex, dragVertex } from './vertexDrag.ts';

/** A place to take hold of what is chosen. `body`: the thing itself, which has its own sign. */
export interface Handle {
  readonly kind: 'corner' | 'middle' | 'bow' | 'body';
  readonly xy: Xy;
  /** Which corner of the chosen line. */
  readonly vertex: number | null;
  readonly begin: () => Drag;
}

/** Segments shorter than this on the screen get no handle in their middle. */
const leastMiddlePx = 44;

/** The handles of the one chosen thing that are in view, as far as this workspace changes such things. */
export function handlesOf(context: ToolContext): Handle[] {
  const { chosen, workspace } = context.input();
  const [id] = chosen;
  if (!id || chosen.length !== 1) return [];
  const parts = context.scene().partsOf.get(id);
  const part = parts?.[0];
  if (!part || !isShapedIn(workspace, part)) return [];
  const view = context.view();
  return [...handlesOfPart(context, part, view)].filter(({ xy }) => isInView(view, toPx(view, xy)));
}

/** Draw shapes everything; Divide its switches; Record and Power look only. */
function isShapedIn(workspace: Workspace, part: Part): boolean {
  return workspace === 'draw' || (workspace === 'divide' && part.kind === 'switch');
}

function* handlesOfPart(context: ToolContext, part: Part, { pxPerM }: View): Generator<Handle> {
  const scene = context.scene();
  switch (part.kind) {
    case 'piece': {
      const { shape } = part;
      const { xy, closed } = shape;
      for (let i = 0; i + 1 < xy.length; i++) {
        if (xyDistanceM(xy[i]!, xy[i + 1]!) * pxPerM < leastMiddlePx) continue;
        yield {
          kind: 'middle',
          xy: between(xy[i]!, xy[i + 1]!, 0.5),
          vertex: null,
          begin: () => dragNewVertex(context, shape, i),
        };
      }
      for (let i = 0; i < xy.length - (closed ? 1 : 0); i++) {
        yield { kind: 'corner', xy: xy[i]!, vertex: i, begin: () => dragVertex(context, shape, i) };
      }
      break;
    }
    case 'gateway':
    case 'crossing': {
      const { shape } = part;
      const line = scene.survey.lines.get(shape.gateway.lineId);
      if (line) {
        yield { kind: 'body', xy: shape.centre, vertex: null, begin: () => dragGateway(context, shape, line) };
      }
      const figures = scene.survey.crossings.get(shape.gateway.id);
      if (!figures || figures.path.length < 2 || figures.chordM * pxPerM < leastMiddlePx) break;
      yield { kind: 'bow', xy: middleOf(figures.path), vertex: null, begin: () => dragBow(context, figures, shape) };
      break;
    }
    case 'switch':
      yield {
        kind: 'body',
        xy: switchSignXy(part, pxPerM),
        vertex: null,
        begin: () => dragSwitch(context, part.row),
      };
      break;
    case 'post': {
      const { id, name } = part.post;
      yield body(part.xy, () => dragThing(context, { kind: 'post', id, name }));
      break;
    }
    case 'energiser': {
      const { id, name } = part.energiser;
      yield body(part.xy, () => dragThing(context, { kind: 'energiser', id, name }));
      break;
    }
    case 'earthField':
      yield body(part.xy, () => dragThing(context, { kind: 'earthField', id: part.earthField.id, name: '' }));
      break;
    case 'leadOut':
    case 'service':
      for (const [i, xy] of part.xy.entries()) {
        yield { kind: 'corner', xy, vertex: null, begin: () => dragPathVertex(context, part, i) };
      }
      break;
  }
}

const body = (xy: Xy, begin: () => Drag): Handle => ({ kind: 'body', xy, vertex: null, begin });

/** The middle of an arc by its own length. */
function middleOf(path: readonly Xy[]): Xy {
  let lengthM = 0;
  for (let i = 1; i < path.length; i++) lengthM += xyDistanceM(path[i - 1]!, path[i]!);
  return pointAtStation(path, lengthM / 2).point;
}

/** Bodies are taken hold of by their whole sign. */
const bodyReachPx = 16;

/** The handle under a point: a corner before a bow before a body before a middle, then the nearest. */
export function handleAt(handles: readonly Handle[], at: Xy, view: Pick<View, 'pxPerM'>): Handle | null {
  const order = { corner: 0, bow: 1, body: 2, middle: 3 };
  let best: Handle | null = null;
  for (const handle of handles) {
    const reachPx = handle.kind === 'body' ? bodyReachPx : handleReachPx;
    if (xyDistanceM(handle.xy, at) * view.pxPerM > reachPx) continue;
    const nearer = best && xyDistanceM(handle.xy, at) < xyDistanceM(best.xy, at);
    if (!best || order[handle.kind] < order[best.kind] || (handle.kind === best.kind && nearer)) best = handle;
  }
  return best;
}
