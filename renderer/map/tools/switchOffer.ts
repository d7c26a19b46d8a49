import type { Xy } from '../../../core/geometry/types.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';
import { postSide } from '../../../core/locate/compass.ts';
import type { SwitchPlace } from '../../../core/model/things.ts';
import { xyAt } from '../../../core/shapes/measuredPath.ts';
import { type Message, message } from '../../../core/words/message.ts';
import type { MapInput } from '../mapTypes.ts';
import type { Scene } from '../scene/buildScene.ts';
import { nearestLine } from './nearestLine.ts';
import { lineReachPx, snapReachPx } from './reach.ts';

/** A place for a cut-out switch near the pointer. */
export interface SwitchOffer {
  readonly place: SwitchPlace;
  readonly xy: Xy;
  /** Direction along the fence, plane metres. */
  readonly along: Xy;
  readonly spot: Message;
}

/** The place meant by the pointer: one of the plan's, at a gate post, at the end of a line, at a lead-out, or somewhere along a line. */
export function switchOffer(scene: Scene, input: MapInput, at: Xy, pxPerM: number, snaps: boolean): SwitchOffer | null {
  const reachM = lineReachPx / pxPerM;
  const fixed = snaps ? nearestOf(at, reachM, [...fixedOffers(scene, input, at, reachM)]) : null;
  if (fixed) return fixed;
  const line = nearestLine(scene, at, reachM);
  if (!line) return null;
  const { shape, atM, point } = line;
  const spot = message('window.map.spots.onLine', { name: shape.line.name });
  return { place: { on: 'line', lineId: shape.line.id, atM }, xy: point, along: directionAt(shape, atM), spot };
}

/** Where that is, for the status bar. */
export function atOffer(offer: SwitchOffer | null): Message | null {
  if (!offer) return null;
  return offer.place.on === 'line' ? offer.spot : message('window.map.spots.at', { spot: offer.spot });
}

function* fixedOffers(scene: Scene, input: MapInput, [x, y]: Xy, reachM: number): Generator<SwitchOffer> {
  for (const candidate of input.plan?.missing ?? []) {
    const along = alongAt(scene, candidate.xy, reachM);
    const spot = message('window.map.spots.suggested', { label: candidate.label });
    yield { place: candidate.place, xy: candidate.xy, along, spot };
  }
  for (const part of scene.search([x - reachM, y - reachM, x + reachM, y + reachM])) {
    if (part.kind === 'gateway') {
      const { gateway, startPost, endPost } = part.shape;
      const along: Xy = [endPost[0] - startPost[0], endPost[1] - startPost[1]];
      for (const [post, xy] of [
        ['start', startPost],
        ['end', endPost],
      ] as const) {
        const fed = part.shape.supplyFrom === post;
        const values = { side: postSide(part.shape, post), name: gateway.name };
        const spot = message(fed ? 'window.map.spots.supplySide' : 'window.map.spots.gatePostAt', values);
        yield { place: { on: 'gateway', gatewayId: gateway.id, post }, xy, along, spot };
      }
    } else if (part.kind === 'piece') {
      const { shape } = part;
      if (!shape.line.live || shape.closed) continue;
      for (const [end, atM] of [
        ['start', 0],
        ['end', shape.lengthM],
      ] as const) {
        const place: SwitchPlace = { on: 'lineEnd', lineId: shape.line.id, end };
        const code = end === 'start' ? 'window.map.spots.startOf' : 'window.map.spots.endOf';
        const spot = message(code, { name: shape.line.name });
        yield { place, xy: xyAt(shape, atM), along: directionAt(shape, atM), spot };
      }
    } else if (part.kind === 'leadOut') {
      const xy = part.xy.at(-1)!;
      const place: SwitchPlace = { on: 'leadOut', leadOutId: part.leadOut.id };
      const spot = message('window.map.spots.leadOutJoins', { name: part.leadOut.name });
      yield { place, xy, along: alongAt(scene, xy, reachM), spot };
    }
  }
}

function nearestOf(at: Xy, reachM: number, offers: readonly SwitchOffer[]): SwitchOffer | null {
  // Fixed places draw the pointer less far than a line does, so that there is room between them.
  const nearM = (reachM * snapReachPx) / lineReachPx;
  let best: SwitchOffer | null = null;
  for (const offer of offers) {
    const awayM = xyDistanceM(offer.xy, at);
    if (awayM <= nearM && (!best || awayM < xyDistanceM(best.xy, at))) best = offer;
  }
  return best;
}

function alongAt(scene: Scene, at: Xy, reachM: number): Xy {
  const line = nearestLine(scene, at, reachM);
  return line ? directionAt(line.shape, line.atM) : [1, 0];
}

export function directionAt(shape: Parameters<typeof xyAt>[0], atM: number): Xy {
  const a = xyAt(shape, atM - 0.5);
  const b = xyAt(shape, atM + 0.5);
  return [b[0] - a[0], b[1] - a[1]];
}
