import { fitAffine } from '../../../core/geometry/fitAffine.ts';
import { fitSimilarity } from '../../../core/geometry/fitSimilarity.ts';
import { type PictureMap, pictureMap } from '../../../core/geometry/picture/pictureMap.ts';
import { suspectPoint } from '../../../core/geometry/picture/suspectPoint.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { Placement, Underlay } from '../../../core/model/underlayThings.ts';
import { workingPlane } from '../../../core/shapes/workingPlane.ts';
import type { Texts } from '../../../core/words/message.ts';
import { drawHandle, drawRubber, drawSnapCue, drawTag } from '../interaction/cues.ts';
import { atSpot, type SnapTarget } from '../interaction/snapping.ts';
import { typedBearingDeg, typedLengthM } from '../interaction/typedMeasures.ts';
import { toPx } from '../plane/view.ts';
import { noProgress, type PaintTools, type Pointer, type Tool, type ToolContext } from '../tools/tool.ts';

interface Laid {
  readonly underlay: Underlay;
  readonly placement: Placement;
  readonly map: PictureMap;
  readonly corners: readonly Xy[];
}

/** Places a picture by hand: a place is clicked on the picture, then where it really is. */
export function createPlacingTool(context: ToolContext): Tool {
  let last: Pointer | null = null;
  let snap: SnapTarget | null = null;
  let kept: Laid | null = null;

  const placing = () => context.input().placing ?? null;

  function laid(): Laid | null {
    const { project } = context.input();
    const underlay = project.underlay.get(placing()?.underlayId ?? '');
    if (!underlay?.placement || underlay.source.from !== 'picture') return null;
    if (kept?.underlay === underlay) return kept;
    const { placement, source } = underlay;
    const map = pictureMap(placement, source, workingPlane(propertyOf(project)));
    const corners = [
      [0, 0],
      [source.widthPx, 0],
      [source.widthPx, source.heightPx],
      [0, source.heightPx],
      [0, 0],
    ].map((corner) => map.toXy(corner as unknown as Xy));
    kept = { underlay, placement, map, corners };
    return kept;
  }

  const tell = (step: Parameters<NonNullable<typeof context.events.onPlacing>>[0]) => context.events.onPlacing?.(step);
  const marksNext = () =>
    placing()?.way === 'distance' ? placing()!.marked.length < 2 : placing()?.marked.length === 0;

  function mark(xy: Xy): void {
    const now = laid();
    if (now?.underlay.source.from !== 'picture') return;
    const [x, y] = now.map.toPixel(xy);
    const { widthPx, heightPx } = now.underlay.source;
    if (x < 0 || y < 0 || x > widthPx || y > heightPx) {
      context.refuse(context.words().placing.beside);
      return;
    }
    tell({ mark: [x, y] });
  }

  return {
    name: 'pin',
    hint() {
      const way = placing()?.way;
      const words = context.words().placing;
      if (marksNext()) {
        if (way === 'distance') {
          return placing()!.marked.length === 0 ? words.firstOfTwo : words.otherPlace;
        }
        return words.knownPlace;
      }
      return way === 'distance' ? words.measure : words.really;
    },
    fields: () => (placing()?.way === 'distance' && !marksNext() ? 'lengthAndBearing' : null),
    progress: () => ({ ...noProgress, snappedTo: atSpot(snap) }),
    move(pointer) {
      last = pointer;
      snap = marksNext() ? null : context.snap(pointer);
      context.invalidate();
    },
    click(pointer) {
      if (marksNext()) return mark(pointer.xy);
      if (placing()?.way === 'distance') return;
      const target = context.snap(pointer);
      tell({ place: target?.lonLat ?? context.toLonLat(pointer.xy) });
    },
    out() {
      last = null;
      snap = null;
      context.invalidate();
    },
    key(event) {
      if (event.key !== 'Backspace' || placing()?.marked.length === 0) return false;
      tell({ takeBack: true });
      return true;
    },
    typed(length, bearing) {
      const { units } = context.input();
      const lengthM = typedLengthM(length, units);
      const bearingDeg = typedBearingDeg(bearing);
      for (const typed of [lengthM, bearingDeg]) {
        if (typeof typed === 'object' && typed !== null) {
          context.refuse(typed.problem);
          return false;
        }
      }
      if (typeof lengthM !== 'number' || lengthM <= 0) {
        context.refuse(context.words().placing.distance);
        return false;
      }
      tell({ measure: { distanceM: lengthM, bearingDeg: bearingDeg as number | null } });
      return true;
    },
    takeBack() {
      if (placing()?.marked.length === 0) return false;
      tell({ takeBack: true });
      return true;
    },
    cancel() {
      if (!placing()) return false;
      tell(placing()!.marked.length > 0 ? { takeBack: true } : { end: true });
      return true;
    },
    paint(tools) {
      const now = laid();
      if (!now) return;
      paintOutline(tools, now.corners);
      paintPoints(tools, now, context.words().placing);
      const marks = (placing()?.marked ?? []).map((pixel) => now.map.toXy(pixel));
      if (marks.length === 2) drawRubber(tools, marks, true);
      else if (marks.length === 1 && last) drawRubber(tools, [marks[0]!, snap?.xy ?? last.xy], true);
      for (const xy of marks) drawHandle(tools, toPx(tools.view, xy), 'bow', true);
      if (snap) drawSnapCue(tools, snap);
    },
  };
}

function paintOutline({ ctx, view, palette }: PaintTools, corners: readonly Xy[]): void {
  ctx.beginPath();
  for (const [i, corner] of corners.entries()) {
    const [x, y] = toPx(view, corner);
    if (i === 0) ctx.moveTo(x, y);
    else ctx.lineTo(x, y);
  }
  ctx.setLineDash([14, 6]);
  ctx.strokeStyle = palette.accent;
  ctx.lineWidth = 2;
  ctx.stroke();
  ctx.setLineDash([]);
}

/** Each control point with its number and how far the picture misses it; the one to look at again stands out. */
function paintPoints(
  tools: PaintTools,
  { placement, map, underlay }: Laid,
  words: Texts['window']['map']['placing'],
): void {
  if (placement.by !== 'points' || underlay.source.from !== 'picture') return;
  const { ctx, view, palette } = tools;
  const suspect = map.quality ? suspectIn(placement, map) : null;
  for (const [i, { pixel }] of placement.points.entries()) {
    const on = toPx(view, map.toXy(pixel));
    const residual = map.quality?.residuals[i];
    const isSuspect = suspect === i;
    const colours = isSuspect ? { ...palette, accent: palette.danger } : palette;
    if (residual) {
      const should = map.toXy(pixel);
      const true_ = toPx(view, [should[0] + residual.eastM, should[1] + residual.northM]);
      ctx.beginPath();
      ctx.moveTo(...on);
      ctx.lineTo(...true_);
      ctx.strokeStyle = colours.accent;
      ctx.lineWidth = 2.5;
      ctx.stroke();
      drawHandle({ ctx, palette: colours }, true_, 'corner', isSuspect);
    }
    drawHandle({ ctx, palette: colours }, on, 'middle', false);
    const text = words.point({ number: i + 1, missM: residual?.lengthM ?? null, suspect: isSuspect });
    drawTag(ctx, colours, [on[0] + 14, on[1] - 20], text, 'left');
  }
}

/** The suspect point, from the places that the residuals give. */
function suspectIn(placement: Extract<Placement, { by: 'points' }>, map: PictureMap): number | null {
  const points = placement.points.map(({ pixel }, i) => {
    const [x, y] = map.toXy(pixel);
    const { eastM, northM } = map.quality!.residuals[i]!;
    return { pixel, map: [x + eastM, y + northM] as Xy };
  });
  return placement.fit === 'affine' ? suspectPoint(points, fitAffine, 3) : suspectPoint(points, fitSimilarity, 2);
}
