import type { Item } from '../../../core/drawing/displayList.ts';
import { readableTurn } from '../../../core/drawing/labels/placesAlong.ts';
import { circle, line } from '../../../core/drawing/paint.ts';
import { type Pen, penStroke } from '../../../core/drawing/pen.ts';
import { placeSign } from '../../../core/drawing/signs/placeSign.ts';
import { paperDirection, paperShift } from '../../../core/drawing/signs/sign.ts';
import { trenchStroke } from '../../../core/drawing/strokes/buried.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { type Px, toPx } from '../plane/view.ts';
import type { CrossingPart } from '../scene/parts.ts';
import type { Look } from './look.ts';
import { labelSizePx } from './mapFont.ts';
import { pixelTraces } from './pixelPath.ts';

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

/** The crossings that are still drawn where they were planned: those of which nothing was measured. */
export function notRecorded(look: Look, parts: readonly CrossingPart[]): readonly CrossingPart[] {
  const { record } = look.input;
  if (!record || record.built.length === 0) return parts;
  const recorded = new Set(record.built.map(({ gatewayId }) => gatewayId));
  return parts.filter(({ figures }) => !recorded.has(figures.gateway.id));
}

/** Planned faint, built strong: the trenches as measured, their points and tapes, and where things had been planned. */
export function drawRecord(look: Look): Item[] {
  const { record } = look.input;
  if (!record) return [];
  return [
    ...record.planned.map((path) => planned(look, path)),
    ...record.built.flatMap((crossing) => built(look, crossing)),
  ];
}

/** Dots of what is nowhere any more, or is not sure. */
const faint = (pen: Pen) => penStroke(pen, 0.16, { ink: pen.inks.inkSoft, dashMm: [0.3, 0.5] });

function planned({ view, pen }: Look, path: readonly Xy[]): Item {
  if (path.length === 1) return circle(toPx(view, path[0]!), 0.9 * pen.unit, null, faint(pen));
  return pixelTraces(view, [path], faint(pen));
}

function built(look: Look, { paths, assumed, points }: RecordedCrossing): Item[] {
  const { view, pen, palette } = look;
  const stroke = trenchStroke(!assumed, pen);
  const written: Px[] = [];
  return [
    pixelTraces(view, paths, { width: stroke.width + 2 * pen.rim, ink: palette.paper }),
    pixelTraces(view, paths, stroke),
    ...(view.pxPerM < tiesFromPxPerM ? [] : points.flatMap((point) => recordedPoint(look, point, written))),
  ];
}

function recordedPoint(look: Look, { places, certain, ties }: RecordedPoint, written: Px[]): Item[] {
  const { view, pen, palette } = look;
  const tape = penStroke(pen, 0.16, { ink: palette.accent });
  const tapes = places.flatMap((xy) => ties.map(({ from }) => line([toPx(view, from), toPx(view, xy)], tape)));
  const marked = { ...pen, inks: { ...palette, ink: palette.accent } };
  const first = places[0];
  return [
    ...tapes,
    ...(first ? [] : astray(look, ties)),
    ...places.flatMap((xy) => placeSign(toPx(view, xy), certain, 0.6, marked).items),
    ...(first && view.pxPerM >= wordsFromPxPerM ? ties.flatMap((tie) => tapeWords(look, first, tie, written)) : []),
  ];
}

/** Tapes that do not meet, each as the circle that its end draws about its post. */
function astray({ view, pen, palette }: Look, ties: RecordedPoint['ties']): Item[] {
  const stroke = penStroke(pen, 0.16, { ink: palette.accent, dashMm: [0.3, 0.5] });
  return ties.map(({ from, lengthM }) => circle(toPx(view, from), lengthM * view.pxPerM, null, stroke));
}

/** Shares of a tape's way from its post at which its length may stand, the best first. */
const wordPlaces = [0.5, 0.65, 0.35, 0.8, 0.2];
/** Lengths stand at least so far from each other. */
const wordsApartPx = 46;

/** The tape's length along it, where no other length stands already; left out where there is no such place. */
function tapeWords(
  { view, palette, textWidth }: Look,
  xy: Xy,
  { from, text }: RecordedPoint['ties'][number],
  written: Px[],
): Item[] {
  const [ax, ay] = toPx(view, from);
  const [bx, by] = toPx(view, xy);
  if (Math.hypot(bx - ax, by - ay) < textWidth(text) + 12) return [];
  const places = wordPlaces.map((share): Px => [ax + (bx - ax) * share, ay + (by - ay) * share]);
  const place = places.find(([x, y]) => written.every(([ox, oy]) => Math.hypot(x - ox, y - oy) >= wordsApartPx));
  if (!place) return [];
  written.push(place);
  const turnDeg = readableTurn(paperDirection([ax, ay], [bx, by]));
  const angle = (turnDeg * Math.PI) / 180;
  return [
    {
      kind: 'text',
      text,
      at: paperShift(place, [Math.cos(angle), Math.sin(angle)], 0, 6),
      font: 'regular',
      size: labelSizePx,
      align: 'centre',
      rotationDeg: turnDeg,
      ink: palette.ink,
      halo: 1.75,
      haloInk: palette.paper,
    },
  ];
}
