import type { LonLat, Xy } from '../../../core/geometry/types.ts';
import { message } from '../../../core/words/message.ts';
import { formatBearing, formatLength } from '../../../core/words/numbers/write.ts';
import { constrainBearing, lengthAlong } from '../interaction/constrain.ts';
import { drawHandle, drawRubber, drawSegmentLength, drawSnapCue } from '../interaction/cues.ts';
import { atSpot, type SnapTarget } from '../interaction/snapping.ts';
import { splitTyped, type Typed, typedBearingDeg, typedLengthM } from '../interaction/typedMeasures.ts';
import { toPx } from '../plane/view.ts';
import { noProgress, type PaintTools, type Pointer, type Progress, type ToolContext } from './tool.ts';

interface Spot {
  readonly lonLat: LonLat;
  readonly xy: Xy;
  readonly snap: SnapTarget | null;
}

/** A path as it is drawn: points set so far and the one under the pointer. Used for fence lines and lead-outs. */
export interface PathDraft {
  readonly points: () => readonly Spot[];
  readonly progress: () => Progress;
  readonly move: (pointer: Pointer) => void;
  /** Sets a point where the pointer is; false where it would double the last one. */
  readonly add: (pointer: Pointer) => boolean;
  /** Sets a point from typed figures; says what is wrong with them. True where it was set. */
  readonly addTyped: (length: string, bearing: string) => boolean;
  /** Begins at a place that is already there. */
  readonly begin: (lonLat: LonLat) => void;
  /** Takes the last point back; false where there is none. */
  readonly back: () => boolean;
  readonly clear: () => void;
  readonly out: () => void;
  readonly paint: (tools: PaintTools) => void;
}

/** Two clicks nearer than this on the screen are one. */
const sameClickPx = 4;

export function createPathDraft(context: ToolContext): PathDraft {
  let points: Spot[] = [];
  let ahead: Spot | null = null;
  let lastPointer: Pointer | null = null;
  const earth = () => context.scene().survey.plane.earth;

  function spotFor(pointer: Pointer): Spot {
    const last = points.at(-1);
    const snap = context.snap(pointer) ?? snapToOwnStart(pointer);
    if (snap) return { lonLat: snap.lonLat, xy: snap.xy, snap };
    const lonLat = context.toLonLat(pointer.xy);
    if (!last || !pointer.shift || pointer.byKeyboard) return { lonLat, xy: pointer.xy, snap: null };
    const before = points.at(-2);
    const wanted = earth().bearingDeg(last.lonLat, lonLat);
    const held = constrainBearing(wanted, before ? earth().bearingDeg(before.lonLat, last.lonLat) : null);
    const at = earth().destination(
      last.lonLat,
      held,
      lengthAlong(earth().distanceM(last.lonLat, lonLat), wanted, held),
    );
    return { lonLat: at, xy: context.toXy(at), snap: null };
  }

  /** A draft is not in the drawing yet, so it offers its own first point for closing. */
  function snapToOwnStart(pointer: Pointer): SnapTarget | null {
    const first = points[0];
    if (!first || points.length < 3 || pointer.alt) return null;
    const away = Math.hypot(first.xy[0] - pointer.xy[0], first.xy[1] - pointer.xy[1]) * context.view().pxPerM;
    if (away > 14) return null;
    return {
      kind: 'lineEnd',
      xy: first.xy,
      lonLat: first.lonLat,
      spot: message('window.map.spots.ownStart'),
      lineId: null,
    };
  }

  function totalM(): number {
    let total = 0;
    for (let i = 1; i < points.length; i++) total += earth().distanceM(points[i - 1]!.lonLat, points[i]!.lonLat);
    return total;
  }

  function set(spot: Spot): boolean {
    const last = points.at(-1);
    if (last) {
      const away = Math.hypot(last.xy[0] - spot.xy[0], last.xy[1] - spot.xy[1]) * context.view().pxPerM;
      if (away < sameClickPx && !(spot.snap && spot.snap !== last.snap && away > 0.01)) return false;
    }
    points.push(spot);
    return true;
  }

  function read<T extends Typed>(typed: T): Exclude<T, { problem: string }> | undefined {
    if (typeof typed === 'object' && typed !== null) {
      context.refuse(typed.problem);
      return undefined;
    }
    return typed as Exclude<T, { problem: string }>;
  }

  function progress(): Progress {
    const last = points.at(-1);
    const snappedTo = atSpot(ahead?.snap);
    if (!last || !ahead) return { ...noProgress, snappedTo };
    const lengthM = earth().distanceM(last.lonLat, ahead.lonLat);
    if (lengthM < 0.001) return { ...noProgress, snappedTo, totalM: totalM() };
    const bearing = earth().bearingDeg(last.lonLat, ahead.lonLat);
    return { lengthM, bearingDeg: bearing, snappedTo, totalM: totalM() + lengthM };
  }

  return {
    points: () => points,
    progress,
    move(pointer) {
      lastPointer = pointer;
      ahead = spotFor(pointer);
      context.invalidate();
    },
    add(pointer) {
      lastPointer = pointer;
      const added = set(spotFor(pointer));
      ahead = points.at(-1) ?? null;
      context.invalidate();
      return added;
    },
    addTyped(lengthText, bearingText) {
      const last = points.at(-1);
      if (!last) {
        context.refuse(context.words().tools.typed.firstPoint);
        return false;
      }
      const [length, bearingAfterAt] = splitTyped(lengthText);
      const lengthM = read(typedLengthM(length, context.input().units));
      const typedBearing = read(typedBearingDeg(bearingAfterAt ?? bearingText));
      if (lengthM === undefined || typedBearing === undefined) return false;
      const pointed = ahead && earth().distanceM(last.lonLat, ahead.lonLat) > 0 ? ahead : null;
      const bearing = typedBearing ?? (pointed ? earth().bearingDeg(last.lonLat, pointed.lonLat) : null);
      const alongM = lengthM ?? (pointed ? earth().distanceM(last.lonLat, pointed.lonLat) : null);
      if (bearing === null || alongM === null) {
        const { typed } = context.words().tools;
        context.refuse(bearing === null ? typed.bearingToo : typed.length);
        return false;
      }
      const lonLat = earth().destination(last.lonLat, bearing, alongM);
      points.push({ lonLat, xy: context.toXy(lonLat), snap: null });
      ahead = points.at(-1)!;
      context.invalidate();
      return true;
    },
    begin(lonLat) {
      points = [{ lonLat, xy: context.toXy(lonLat), snap: null }];
      context.invalidate();
    },
    back() {
      const had = points.pop() !== undefined;
      if (lastPointer) ahead = spotFor(lastPointer);
      context.invalidate();
      return had;
    },
    clear() {
      points = [];
      ahead = null;
      context.invalidate();
    },
    out() {
      ahead = null;
      context.invalidate();
    },
    paint(tools) {
      const { ctx, view, palette } = tools;
      const last = points.at(-1);
      drawRubber(
        tools,
        points.map(({ xy }) => xy),
        false,
      );
      if (last && ahead) {
        drawRubber(tools, [last.xy, ahead.xy], true);
        const { lengthM, bearingDeg: bearing } = progress();
        if (lengthM !== null && bearing !== null && lengthM > 0) {
          const text = `${formatLength(lengthM, context.input().units)}  ${formatBearing(bearing)}`;
          drawSegmentLength(tools, last.xy, ahead.xy, text);
        }
      }
      for (const spot of points) drawHandle({ ctx, palette }, toPx(view, spot.xy), 'corner', false);
      if (ahead?.snap) drawSnapCue(tools, ahead.snap);
    },
  };
}
