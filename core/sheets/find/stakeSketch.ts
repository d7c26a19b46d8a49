import type { Item, PaperBox, PaperPoint } from '../../drawing/displayList.ts';
import type { LabelRequest } from '../../drawing/labels/label.ts';
import { labelBlock, labelLines } from '../../drawing/labels/labelBlock.ts';
import { placeLabels } from '../../drawing/labels/placeLabels.ts';
import { placesAlongLine } from '../../drawing/labels/placesAlong.ts';
import { placesAround } from '../../drawing/labels/placesAround.ts';
import { type MapWindow, mapWindow } from '../../drawing/mapWindow.ts';
import { mayLie, waysOf } from '../../drawing/mayLie.ts';
import { box, figure, line, lines, stroke, text } from '../../drawing/paint.ts';
import { gateSign } from '../../drawing/signs/gateSign.ts';
import { northArrow } from '../../drawing/signs/northArrow.ts';
import { placeSign } from '../../drawing/signs/placeSign.ts';
import { drawScaleBar, scaleBarFor } from '../../drawing/signs/scaleBar.ts';
import { squareAround } from '../../drawing/signs/sign.ts';
import { trenchStroke } from '../../drawing/strokes/buried.ts';
import { ink, mmPerPt, pen } from '../../drawing/style.ts';
import type { MeasureText } from '../../drawing/words.ts';
import { type Box, boxAround } from '../../geometry/box.ts';
import { slicePolyline } from '../../geometry/polyline.ts';
import type { Xy } from '../../geometry/types.ts';
import { xyDistanceM } from '../../geometry/vector.ts';
import { depthThereLabel } from '../../locate/depthWords.ts';
import type { StakeOut, StakePoint, StakeTape } from '../../locate/stakeOut.ts';
import { samePostM } from '../../locate/tieFrom.ts';
import { apartM, placeMarks } from '../../locate/tieWords.ts';
import type { Survey } from '../../survey/types.ts';
import type { Message } from '../../words/message.ts';
import type { Figures } from '../../words/types.ts';
import { scaleText } from '../scales.ts';

/** Scales of the sketch, 1 to each of these; common practice. */
const sketchScales: readonly number[] = [20, 25, 40, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 2000];

export interface SketchInput {
  readonly survey: Survey;
  readonly f: Figures;
  readonly measure: MeasureText;
  /** Size of its letters; on a small screen larger than on paper. */
  readonly sizePt: number;
}

export interface Sketch {
  readonly items: readonly Item[];
  readonly scaleDenominator: number;
}

/** A, B, C, ... of the points, in order along the trench. */
export function pointLetter(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : `${letter}${Math.floor(index / 26)}`;
}

/**
 * A crossing from above, north up, in true proportions: the gate, its posts, the trench with how far off it may lie,
 * and the tapes that lead to one of its points (`key`), or to all of them (null).
 */
export function stakeSketch(stake: StakeOut, key: string | null, frame: PaperBox, input: SketchInput): Sketch {
  const [left, top, right, bottom] = frame;
  const footMm = 5 + input.sizePt * mmPerPt * 1.6;
  const room: PaperBox = [left, top, right, bottom - footMm];
  const shown = stake.points.filter((point) => key === null || point.key === key);
  const extent = extentOf(stake, shown);
  const scaleDenominator = scaleFor(extent, room, input.sizePt);
  const centre: Xy = [(extent[0] + extent[2]) / 2, (extent[1] + extent[3]) / 2];
  const window = mapWindow(room, centre, scaleDenominator, input.survey.plane);
  const drawing = drawn(stake, shown, window, input);
  const arrow: PaperPoint = [right - 5, top + 17];
  const labels = placeLabels(drawing.requests, {
    frame: room,
    signs: [...drawing.signs, [right - 9, top, right, top + 18]],
    lines: drawing.lines,
    measure: input.measure,
  });
  const items: Item[] = [
    { kind: 'clip', box: room, items: drawing.items },
    ...northArrow(arrow),
    ...labels.placed.flatMap(({ texts, leader }) => [
      ...(leader ? [line(leader, stroke(pen.hairline))] : []),
      ...texts,
    ]),
    box(frame, null, stroke(pen.sign)),
    ...foot(scaleDenominator, stake.crossing.inGround, input, [left, bottom - footMm, right, bottom]),
  ];
  const plan = input.f.words.sheets.stake.plan({
    gateway: stake.crossing.figures.gateway.name,
    scale: scaleText(scaleDenominator),
  });
  return { items: [figure(plan, items)], scaleDenominator };
}

function extentOf({ crossing }: StakeOut, shown: readonly StakePoint[]): Box {
  const { shape } = crossing;
  const ways = waysOf(crossing).flatMap(({ path }) => path);
  const tapes = shown.flatMap(({ places, tapes: all }) => [
    ...places.map(({ xy }) => xy),
    ...all.map(({ post }) => post),
  ]);
  return boxAround([shape.startPost, shape.endPost, ...ways, ...tapes])!;
}

function scaleFor([minX, minY, maxX, maxY]: Box, [left, top, right, bottom]: PaperBox, sizePt: number): number {
  const [rimX, rimY] = [6 + sizePt, 4 + sizePt * 0.7];
  const fits = (scale: number) =>
    ((maxX - minX) * 1000) / scale <= right - left - 2 * rimX &&
    ((maxY - minY) * 1000) / scale <= bottom - top - 2 * rimY;
  return sketchScales.find(fits) ?? 5000;
}

interface Drawing {
  readonly items: readonly Item[];
  readonly signs: readonly PaperBox[];
  readonly lines: readonly (readonly PaperPoint[])[];
  readonly requests: readonly LabelRequest[];
}

function drawn(stake: StakeOut, shown: readonly StakePoint[], window: MapWindow, input: SketchInput): Drawing {
  const { crossing, points } = stake;
  const { shape, courses, inGround } = crossing;
  const { toPaper } = window;
  const fences = fencePaths(stake, input.survey).flatMap(window.clip);
  const gate = gateSign(toPaper(shape.startPost), toPaper(shape.endPost), shape.gateway, false);
  const trenches = courses.map(({ path }) => window.clip(path));
  const tapes = shown.flatMap((point) =>
    point.places.flatMap(({ xy }) =>
      point.tapes.map((tape) => ({ path: [toPaper(tape.post), toPaper(xy)], tape, by: point.by })),
    ),
  );
  const astray = shown.flatMap((point) => (point.places.length === 0 ? tapeCircles(point, window) : []));
  const posts = postsShown(stake, shown, window, input.f);
  const marks = points.flatMap((point, i) => marksOf(point, i, window, input.f));
  const labelled = labelledTapes(tapes);
  return {
    items: [
      // What is only planned lies nowhere, so there is no ground that it may lie in.
      ...(inGround ? mayLie(waysOf(crossing), window) : []),
      lines(fences, stroke(0.5)),
      ...gate.items,
      ...trenches.flatMap((paths) => trenchLine(paths, inGround)),
      ...astray.map(({ path }) => line(path, stroke(0.25, { dash: [0.4, 0.8] }))),
      ...tapes.map(({ path }) => line(path, stroke(0.25))),
      ...posts.map(({ at }) => box(squareAround(at, 0.9), ink.white, stroke(pen.frame))),
      ...marks.flatMap(({ point, at }) => placeSign(at, isCertain(point), 1.1).items),
    ],
    signs: [
      ...gate.parts,
      ...posts.map(({ at }) => squareAround(at, 1.1)),
      ...marks.map(({ at }) => squareAround(at, 1.2)),
    ],
    lines: [...trenches.flat(), ...tapes.map(({ path }) => path), ...fences],
    requests: [
      ...marks.flatMap(({ point, letter, at }) =>
        letter === null ? [] : [pointLabel(point, letter, at, shown.includes(point), input)],
      ),
      ...labelled.map(({ path, tape, by }) => tapeLabel(path, tape, by, input)),
      ...astray.flatMap(({ path, tape }) => (path.length > 1 ? [tapeLabel(path, tape, 'ties', input)] : [])),
      ...posts.map(({ name, at }) => postLabel(name, at, input)),
    ],
  };
}

/** Places nearer to each other than this on paper are told apart by their marks only. */
const apartMm = 9;

/** "A"; where a point can be in several places "A north", "A south", as far as there is room for both. */
function marksOf(point: StakePoint, index: number, { toPaper, mmPerM }: MapWindow, f: Figures) {
  const letter = pointLetter(index);
  const names = placeMarks(point.places).map(f.say);
  const close = apartM(point.places) * mmPerM < apartMm;
  return point.places.map(({ xy }, i) => {
    const mark = () => f.words.sheets.stake.mark({ letter, place: names[i]! });
    const name = close ? (i === 0 ? letter : null) : mark();
    return { point, letter: point.places.length > 1 ? name : letter, at: toPaper(xy) };
  });
}

/** Measured, and in one place. */
function isCertain({ solved, places }: StakePoint): boolean {
  return solved !== null && places.length === 1;
}

/** Tapes to the several places of a point read the same: one of them is told, the longer on paper. */
function labelledTapes<T extends { readonly tape: StakeTape }>(tapes: readonly T[]): readonly T[] {
  const first = new Map<StakeTape, T>();
  for (const each of tapes) if (!first.has(each.tape)) first.set(each.tape, each);
  return [...first.values()];
}

const circleSteps = 96;

/** Tapes that do not meet, each as the circle that its end draws about its post, as far as it is in the picture. */
function tapeCircles({ tapes }: StakePoint, window: MapWindow): { path: readonly PaperPoint[]; tape: StakeTape }[] {
  return tapes.flatMap((tape) => {
    const round = Array.from({ length: circleSteps + 1 }, (_, i): Xy => {
      const angle = (2 * Math.PI * i) / circleSteps;
      return [tape.post[0] + tape.distanceM * Math.sin(angle), tape.post[1] + tape.distanceM * Math.cos(angle)];
    });
    return window.clip(round).map((path) => ({ path, tape }));
  });
}

function trenchLine(paths: readonly (readonly PaperPoint[])[], inGround: boolean): Item[] {
  if (paths.length === 0) return [];
  return [lines(paths, trenchStroke(inGround))];
}

/** All fences, the gateway's own with its opening left out. */
function fencePaths({ crossing: { shape } }: StakeOut, { lines: drawn }: Survey): (readonly Xy[])[] {
  const { fromM, toM, gateway } = shape;
  return [...drawn.values()].flatMap(({ line: { id }, xy, lengthM }) => {
    if (id !== gateway.lineId) return [xy];
    // On a closed line the opening may lie across its beginning.
    if (fromM < 0 || toM > lengthM) return [slicePolyline(xy, toM % lengthM, (fromM + lengthM) % lengthM)];
    return [slicePolyline(xy, 0, fromM), slicePolyline(xy, toM, lengthM)];
  });
}

/** This gate's own posts, those that tapes are held to, and marked ones in the picture. */
function postsShown(
  { crossing, postsNear, postNames }: StakeOut,
  shown: readonly StakePoint[],
  window: MapWindow,
  f: Figures,
) {
  const { shape } = crossing;
  const all: { name: string; xy: Xy }[] = [];
  const add = (name: Message, xy: Xy) => {
    if (all.every((known) => xyDistanceM(known.xy, xy) >= samePostM)) all.push({ name: f.say(name), xy });
  };
  add(postNames.start, shape.startPost);
  add(postNames.end, shape.endPost);
  for (const { tapes } of shown) for (const { postName, post } of tapes) add(postName, post);
  for (const { name, xy, from } of postsNear) if (from.on === 'post') add(name, xy);
  return all.map(({ name, xy }) => ({ name, at: window.toPaper(xy) })).filter(({ at }) => window.shows(at));
}

function pointLabel(
  { depth }: StakePoint,
  letter: string,
  at: PaperPoint,
  isShown: boolean,
  input: SketchInput,
): LabelRequest {
  const words = isShown ? depthThereLabel(depth) : null;
  const block = labelBlock(
    [
      { text: letter, font: 'bold', sizePt: input.sizePt * 1.25 },
      ...(words ? [{ text: input.f.say(words), font: 'figures', sizePt: input.sizePt } as const] : []),
    ],
    input.measure,
  );
  return { priority: 100, places: placesAround(squareAround(at, 1.2), block), listedAs: null };
}

function tapeLabel(
  path: readonly PaperPoint[],
  { distanceM }: StakeTape,
  by: StakePoint['by'],
  { f, measure, sizePt }: SketchInput,
): LabelRequest {
  const { tape, tapeAssumed, tapePlanned } = f.words.sheets.stake;
  const words = { drawn: tapeAssumed, planned: tapePlanned, ties: tape, offset: tape, gps: tape }[by]({ distanceM });
  const style = { sizePt, font: 'bold' } as const;
  const middle: PaperPoint = [(path[0]![0] + path[1]![0]) / 2, (path[0]![1] + path[1]![1]) / 2];
  const away = placesAround(squareAround(middle, 0.3), labelBlock([{ text: words, ...style }], measure));
  return {
    priority: 90,
    places: [
      ...placesAlongLine([path], words, style, 0.6, measure),
      ...away.map((place) => ({ ...place, cost: place.cost + 2 })),
    ],
    listedAs: null,
  };
}

function postLabel(name: string, at: PaperPoint, { measure, sizePt }: SketchInput): LabelRequest {
  const block = labelBlock(labelLines(name, { font: 'regular', sizePt }, measure), measure);
  return { priority: 70, places: placesAround(squareAround(at, 1.1), block), listedAs: name };
}

function foot(
  scaleDenominator: number,
  inGround: boolean,
  { f, sizePt, measure }: SketchInput,
  [left, top, right, bottom]: PaperBox,
): Item[] {
  const bar = scaleBarFor(scaleDenominator, f.units, Math.min(45, (right - left) / 2.6));
  const { shaded, notInTheGround } = f.words.sheets.stake;
  const words = inGround ? shaded : notInTheGround;
  const roomy = measure(words, 'regular', sizePt) < right - left - bar.length - 20;
  return [
    line(
      [
        [left, top],
        [right, top],
      ],
      stroke(pen.hairline),
    ),
    ...drawScaleBar(bar, [left + 4, top + 1.5 + sizePt * mmPerPt]).map((item) => {
      return item.kind === 'text' ? { ...item, size: sizePt * mmPerPt } : item;
    }),
    ...(roomy ? [text(words, [right - 3, bottom - 2.4], { sizePt, align: 'right', ink: ink.soft })] : []),
  ];
}
