import { nearestOnPolyline } from '../../../core/geometry/polyline.ts';
import type { LonLat, Xy } from '../../../core/geometry/types.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';
import { pushAll } from '../../../core/model/pushAll.ts';
import { type Message, message } from '../../../core/words/message.ts';
import type { Scene } from '../scene/buildScene.ts';

export type SnapKind = 'post' | 'gatePost' | 'lineEnd' | 'energiser' | 'vertex' | 'line';

/** A place that the pointer is drawn to. */
export interface SnapTarget {
  readonly kind: SnapKind;
  readonly xy: Xy;
  /** The very place it stands for, so that what is joined is joined exactly. */
  readonly lonLat: LonLat;
  /** "post P4", "end of F2". */
  readonly spot: Message;
  readonly lineId: string | null;
}

/** Where that is, for the status bar: "at post P4", "on F2". */
export function atSpot(target: SnapTarget | null | undefined): Message | null {
  if (!target) return null;
  return target.kind === 'line' ? target.spot : message('window.map.spots.at', { spot: target.spot });
}

/** What snapping leaves out: the vertex being dragged must not snap to itself or to its own two segments. */
export interface SnapExcept {
  readonly lineId: string;
  readonly vertex: number;
}

/** Of two targets at one place the firmer names it: a post before the gate post, the end or the bend that stands there. */
const firmness: Readonly<Record<SnapKind, number>> = {
  post: 0,
  gatePost: 1,
  energiser: 2,
  lineEnd: 3,
  vertex: 4,
  line: 5,
};

/** Targets nearer together than this are one place. */
const sameplaceM = 0.05;

/**
 * The target that the pointer is drawn to: the nearest point within reach, and only where there is none the nearest
 * line. Of points at one place, the firmest.
 */
export function chooseSnap(pointer: Xy, targets: readonly SnapTarget[], reachM: number): SnapTarget | null {
  const within = targets.filter(({ xy }) => xyDistanceM(pointer, xy) <= reachM);
  const points = within.filter(({ kind }) => kind !== 'line');
  const candidates = points.length > 0 ? points : within;
  let best: SnapTarget | null = null;
  for (const target of candidates) if (!best || isBetter(pointer, target, best)) best = target;
  return best;
}

function isBetter(pointer: Xy, target: SnapTarget, best: SnapTarget): boolean {
  if (xyDistanceM(target.xy, best.xy) <= sameplaceM) return firmness[target.kind] < firmness[best.kind];
  return xyDistanceM(pointer, target.xy) < xyDistanceM(pointer, best.xy);
}

/** Everything near a point that can be snapped to. */
export function snapTargets(scene: Scene, pointer: Xy, reachM: number, except: SnapExcept | null): SnapTarget[] {
  const [x, y] = pointer;
  const targets: SnapTarget[] = [];
  const linesDone = new Set<string>();
  for (const part of scene.search([x - reachM, y - reachM, x + reachM, y + reachM])) {
    switch (part.kind) {
      case 'post': {
        const { post } = part;
        targets.push({
          kind: 'post',
          xy: part.xy,
          lonLat: post.at,
          spot: message('window.map.spots.post', { name: post.name }),
          lineId: null,
        });
        break;
      }
      case 'energiser': {
        const { at, name } = part.energiser;
        targets.push({
          kind: 'energiser',
          xy: part.xy,
          lonLat: at,
          spot: message('window.map.spots.energiser', { name }),
          lineId: null,
        });
        break;
      }
      case 'gateway': {
        const { gateway, startPost, endPost, startPostAt, endPostAt } = part.shape;
        const spot = message('window.map.spots.gatePost', { name: gateway.name });
        const { lineId } = gateway;
        if (except?.lineId === lineId) break;
        targets.push({ kind: 'gatePost', xy: startPost, lonLat: startPostAt, spot, lineId });
        targets.push({ kind: 'gatePost', xy: endPost, lonLat: endPostAt, spot, lineId });
        break;
      }
      case 'piece':
        if (linesDone.has(part.id)) break;
        linesDone.add(part.id);
        pushAll(targets, lineTargets(scene, part.shape.line.id, pointer, reachM, except));
        break;
    }
  }
  return targets;
}

function* lineTargets(
  scene: Scene,
  lineId: string,
  pointer: Xy,
  reachM: number,
  except: SnapExcept | null,
): Generator<SnapTarget> {
  const { line, xy } = scene.survey.lines.get(lineId)!;
  const moving = except?.lineId === lineId ? except.vertex : null;
  const last = xy.length - 1;
  for (const [i, vertex] of xy.entries()) {
    if (i === moving || xyDistanceM(vertex, pointer) > reachM) continue;
    const isEnd = i === 0 || i === last;
    yield {
      kind: isEnd ? 'lineEnd' : 'vertex',
      xy: vertex,
      lonLat: line.path[i]!,
      spot: message(isEnd ? 'window.map.spots.lineEnd' : 'window.map.spots.corner', { name: line.name }),
      lineId,
    };
  }
  // A line does not snap to its own sides while one of its corners is moved.
  if (moving !== null) return;
  const nearest = nearestOnPolyline(pointer, xy);
  if (!nearest || nearest.distanceM > reachM) return;
  yield {
    kind: 'line',
    xy: nearest.point,
    lonLat: scene.plane.toLonLat(nearest.point),
    spot: message('window.map.spots.onLine', { name: line.name }),
    lineId,
  };
}
