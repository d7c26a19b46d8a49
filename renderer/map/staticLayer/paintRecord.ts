import type { Xy } from '../../../core/geometry/types.ts';
import { type Px, toPx } from '../plane/view.ts';
import type { CrossingPart } from '../scene/parts.ts';
import { disc } from '../signs/pen.ts';
import type { Look } from './look.ts';
import { mapFont } from './mapFont.ts';
import { tracePlanePath } from './pixelPath.ts';

/** What Record lays over the drawing. */
export interface RecordOverlay {
  /** Crossings that were measured, where they really lie. */
  readonly built: readonly RecordedCrossing[];
  /** Paths and places as they had been planned, where that is not where they were built. */
  readonly planned: readonly (readonly Xy[])[];
}

export interface RecordedCrossing {
  /** Its gateway, whose crossing is then not drawn as planned. */
  readonly gatewayId: string;
  /** Every way that its trench may run. */
  readonly paths: readonly (readonly Xy[])[];
  /** Nobody measured how the trench runs between its ends. */
  readonly assumed: boolean;
  readonly points: readonly RecordedPoint[];
}

export interface RecordedPoint {
  /** Every place where it can be; none where its tapes do not meet. */
  readonly places: readonly Xy[];
  /** One place, and nothing against it. */
  readonly certain: boolean;
  readonly ties: readonly { readonly from: Xy; readonly lengthM: number; readonly text: string }[];
}

/** From so many pixels a metre on, ties are drawn, and from so many their lengths too. */
const tiesFromPxPerM = 6;
const wordsFromPxPerM = 22;
const buriedDash = [7, 5];
const assumedDash = [2, 4];

/** The crossings that are still drawn where they were planned: those of which nothing was measured. */
export function notRecorded(look: Look, parts: readonly CrossingPart[]): readonly CrossingPart[] {
  const { record } = look.input;
  if (!record || record.built.length === 0) return parts;
  const recorded = new Set(record.built.map(({ gatewayId }) => gatewayId));
  return parts.filter(({ figures }) => !recorded.has(figures.gateway.id));
}

/** Planned faint, built strong: the trenches as measured, their points and tapes, and where things had been planned. */
export function paintRecord(look: Look): void {
  const { record } = look.input;
  if (!record) return;
  for (const path of record.planned) paintPlanned(look, path);
  for (const crossing of record.built) paintBuilt(look, crossing);
}

function paintPlanned({ ctx, view, palette }: Look, path: readonly Xy[]): void {
  ctx.strokeStyle = palette.inkSoft;
  ctx.lineWidth = 1.2;
  ctx.setLineDash([2, 4]);
  if (path.length === 1) {
    const [x, y] = toPx(view, path[0]!);
    disc(ctx, x, y, 7);
  } else {
    ctx.beginPath();
    tracePlanePath(ctx, view, path);
  }
  ctx.stroke();
  ctx.setLineDash([]);
}

function paintBuilt(look: Look, { paths, assumed, points }: RecordedCrossing): void {
  const { ctx, view, palette, linePx } = look;
  const draw = (widthPx: number, style: string, dash: readonly number[]) => {
    ctx.beginPath();
    for (const path of paths) tracePlanePath(ctx, view, path);
    ctx.setLineDash([...dash]);
    ctx.lineWidth = widthPx;
    ctx.strokeStyle = style;
    ctx.stroke();
  };
  draw(linePx + 4, palette.paper, []);
  if (assumed) draw(1.6, palette.ink, assumedDash);
  else draw(Math.max(2.4, linePx), palette.ink, buriedDash);
  ctx.setLineDash([]);
  if (view.pxPerM < tiesFromPxPerM) return;
  const written: Px[] = [];
  for (const point of points) paintPoint(look, point, written);
}

function paintPoint(look: Look, { places, certain, ties }: RecordedPoint, written: Px[]): void {
  const { ctx, view, palette } = look;
  ctx.strokeStyle = palette.accent;
  ctx.lineWidth = 1.2;
  for (const xy of places) {
    for (const { from } of ties) {
      ctx.beginPath();
      tracePlanePath(ctx, view, [from, xy]);
      ctx.stroke();
    }
  }
  if (places.length === 0) paintAstray(look, ties);
  for (const xy of places) {
    const [x, y] = toPx(view, xy);
    disc(ctx, x, y, 4.5);
    ctx.fillStyle = certain ? palette.accent : palette.paper;
    ctx.fill();
    if (!certain) ctx.stroke();
  }
  const first = places[0];
  if (first && view.pxPerM >= wordsFromPxPerM) for (const tie of ties) paintTape(look, first, tie, written);
}

/** Tapes that do not meet, each as the circle that its end draws about its post. */
function paintAstray({ ctx, view }: Look, ties: RecordedPoint['ties']): void {
  ctx.setLineDash([2, 4]);
  for (const { from, lengthM } of ties) {
    const [x, y] = toPx(view, from);
    disc(ctx, x, y, lengthM * view.pxPerM);
    ctx.stroke();
  }
  ctx.setLineDash([]);
}

/** Shares of a tape's way from its post at which its length may stand, the best first. */
const wordPlaces = [0.5, 0.65, 0.35, 0.8, 0.2];
/** Lengths stand at least so far from each other. */
const wordsApartPx = 46;

/** The tape's length along it, where no other length stands already; left out where there is no such place. */
function paintTape(
  { ctx, view, palette }: Look,
  xy: Xy,
  { from, text }: RecordedPoint['ties'][number],
  written: Px[],
): void {
  const [ax, ay] = toPx(view, from);
  const [bx, by] = toPx(view, xy);
  ctx.font = mapFont();
  if (Math.hypot(bx - ax, by - ay) < ctx.measureText(text).width + 12) return;
  const places = wordPlaces.map((share): Px => [ax + (bx - ax) * share, ay + (by - ay) * share]);
  const place = places.find(([x, y]) => written.every(([ox, oy]) => Math.hypot(x - ox, y - oy) >= wordsApartPx));
  if (!place) return;
  written.push(place);
  let angle = Math.atan2(by - ay, bx - ax);
  if (Math.abs(angle) > Math.PI / 2) angle += Math.PI;
  ctx.save();
  ctx.translate(...place);
  ctx.rotate(angle);
  ctx.textAlign = 'center';
  ctx.textBaseline = 'bottom';
  ctx.lineWidth = 3.5;
  ctx.strokeStyle = palette.paper;
  ctx.strokeText(text, 0, -3);
  ctx.fillStyle = palette.ink;
  ctx.fillText(text, 0, -3);
  ctx.restore();
}
