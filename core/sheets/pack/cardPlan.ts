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
import { placeSign } from '../../drawing/signs/placeSign.ts';
import { drawScaleBar, scaleBarFor } from '../../drawing/signs/scaleBar.ts';
import { squareAround } from '../../drawing/signs/sign.ts';
import { trenchStroke } from '../../drawing/strokes/buried.ts';
import { ink, letters, pen } from '../../drawing/style.ts';
import { type Box, boxAround } from '../../geometry/box.ts';
import { nearestOnPolyline } from '../../geometry/polyline.ts';
import type { Xy } from '../../geometry/types.ts';
import { between, xyDistanceM } from '../../geometry/vector.ts';
import type { CrossingAsBuilt } from '../../locate/crossingAsBuilt.ts';
import { gatePostName, gatePostWord } from '../../locate/tieFrom.ts';
import type { Figures } from '../../words/types.ts';
import { scaleText } from '../scales.ts';
import type { CardPlace, CardPoint } from './cardPoints.ts';
import type { PackInput } from './packInput.ts';

/** Scales of the sketch on a card, 1 to each of these; common practice. */
const cardScales: readonly number[] = [20, 25, 40, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 2000];
/** Room around what is drawn, for words. */
const rimMm = 11;
/** The foot of the sketch, for its scale and arrow. */
const footMm = 9;

export interface CardPlan {
  readonly items: readonly Item[];
  readonly scaleDenominator: number;
}

/** The crossing seen from above, to scale: gate, trench, posts, ties with their lengths, and what was not measured. */
export function cardPlan(
  built: CrossingAsBuilt,
  points: readonly CardPoint[],
  frame: PaperBox,
  input: PackInput,
): CardPlan {
  const { survey, f, measure } = input;
  const [left, top, right, bottom] = frame;
  const room: PaperBox = [left, top, right, bottom - footMm];
  const extent = extentOf(built, points);
  const scaleDenominator = scaleFor(extent, room);
  const centre: Xy = [(extent[0] + extent[2]) / 2, (extent[1] + extent[3]) / 2];
  const window = mapWindow(room, centre, scaleDenominator, survey.plane);
  const drawing = drawnPlan(built, points, window, input);
  const labels = placeLabels(drawing.requests, { frame: room, signs: drawing.signs, lines: drawing.lines, measure });
  const items: Item[] = [
    { kind: 'clip', box: room, items: drawing.items },
    ...labels.placed.flatMap(({ texts, leader }) => [
      ...(leader ? [line(leader, stroke(pen.hairline))] : []),
      ...texts,
    ]),
    box(frame, null, stroke(pen.sign)),
    ...planFoot(scaleDenominator, built.inGround, f, [left, bottom - footMm, right, bottom]),
  ];
  const name = built.figures.gateway.name;
  return {
    items: [figure(f.words.sheets.card.planOf({ gateway: name, scale: scaleText(scaleDenominator) }), items)],
    scaleDenominator,
  };
}

function extentOf(built: CrossingAsBuilt, points: readonly CardPoint[]): Box {
  const { shape } = built;
  const posts = points.flatMap(({ solved }) => solved?.ties.map(({ xy }) => xy) ?? []);
  const ways = waysOf(built).flatMap(({ path }) => path);
  const places = points.flatMap((point) => point.places.map(({ xy }) => xy));
  return boxAround([shape.startPost, shape.endPost, ...ways, ...places, ...posts])!;
}

function scaleFor(extent: Box, [left, top, right, bottom]: PaperBox): number {
  const [widthM, heightM] = [extent[2] - extent[0], extent[3] - extent[1]];
  const fits = (scale: number) =>
    (widthM * 1000) / scale <= right - left - 2 * rimMm && (heightM * 1000) / scale <= bottom - top - 2 * rimMm;
  return cardScales.find(fits) ?? 5000;
}

interface Drawing {
  readonly items: readonly Item[];
  readonly signs: readonly PaperBox[];
  readonly lines: readonly (readonly PaperPoint[])[];
  readonly requests: readonly LabelRequest[];
}

function drawnPlan(built: CrossingAsBuilt, points: readonly CardPoint[], window: MapWindow, input: PackInput): Drawing {
  const { shape } = built;
  const { toPaper } = window;
  const fences = [...input.survey.lines.values()].flatMap(({ xy }) => window.clip(xy));
  const gate = gateSign(toPaper(shape.startPost), toPaper(shape.endPost), shape.gateway, true);
  const trench = built.courses.flatMap(({ path }) => window.clip(path));
  const ties = tieLines(points, window);
  const posts = postMarks(points, built, window, input);
  const marks = points.flatMap(({ places, solved }) =>
    places.map((place) => ({ place, certain: solved !== null && places.length === 1, at: toPaper(place.xy) })),
  );
  const sizes = dimensions(built, window, input);
  return {
    items: [
      lines(fences, stroke(0.5)),
      ...gate.items,
      ...(built.inGround ? mayLie(waysOf(built), window) : []),
      ...(trench.length > 0 ? [lines(trench, trenchStroke(built.inGround && !built.bowAssumed))] : []),
      ...ties.map(({ path }) => line(path, stroke(pen.thin))),
      ...sizes.items,
      ...posts.items,
      ...marks.flatMap(({ certain, at }) => placeSign(at, certain, 0.9).items),
    ],
    signs: [...gate.parts, ...posts.signs, ...marks.map(({ at }) => squareAround(at, 1)), ...sizes.signs],
    lines: [...trench, ...ties.map(({ path }) => path), ...fences],
    requests: [
      ...marks.map(({ place, at }) => pointLabel(place, at, input)),
      ...ties.map(({ path, lengthM }) => tieLabel(path, lengthM, input)),
      ...posts.requests,
      ...sizes.requests,
    ],
  };
}

function pointLabel({ name }: CardPlace, at: PaperPoint, { measure }: PackInput): LabelRequest {
  const block = labelBlock([{ text: name, font: 'bold', sizePt: letters.heading }], measure);
  return { priority: 100, places: placesAround(squareAround(at, 1), block), listedAs: null };
}

function tieLines(points: readonly CardPoint[], { toPaper }: MapWindow): { path: PaperPoint[]; lengthM: number }[] {
  return points.flatMap(({ places, solved }) =>
    places.flatMap(({ xy }) =>
      (solved?.ties ?? []).map((tie) => ({ path: [toPaper(tie.xy), toPaper(xy)], lengthM: tie.distanceM })),
    ),
  );
}

function tieLabel(path: readonly PaperPoint[], lengthM: number, { f, measure }: PackInput): LabelRequest {
  const words = f.tape(lengthM);
  const style = { sizePt: letters.table, font: 'figures' } as const;
  const along = placesAlongLine([path], words, style, 0.6, measure);
  const middle: PaperPoint = [(path[0]![0] + path[1]![0]) / 2, (path[0]![1] + path[1]![1]) / 2];
  const block = labelBlock([{ text: words, ...style }], measure);
  const away = placesAround(squareAround(middle, 0.3), block).map((place) => ({ ...place, cost: place.cost + 2 }));
  return { priority: 80, places: [...along, ...away], listedAs: null };
}

/** Posts that a tape was held to, and the marked ones near by, each with its name. */
function postMarks(points: readonly CardPoint[], built: CrossingAsBuilt, window: MapWindow, input: PackInput) {
  const { say } = input.f;
  const used = points.flatMap(({ solved }) => solved?.ties ?? []).map(({ name, xy }) => ({ name: say(name), xy }));
  const { startPost, endPost } = built.shape;
  const gatePosts = [
    { name: say(gatePostName(built.shape, 'start')), xy: startPost },
    { name: say(gatePostName(built.shape, 'end')), xy: endPost },
  ];
  const all = new Map([...gatePosts, ...used].map(({ name, xy }) => [name, xy]));
  const shown = [...all].map(([name, xy]) => ({ name, at: window.toPaper(xy) })).filter(({ at }) => window.shows(at));
  const inShort = new Map(
    (['start', 'end'] as const).map((end) => [
      say(gatePostName(built.shape, end)),
      say(gatePostWord(built.shape, end)),
    ]),
  );
  return {
    items: shown.map(({ at }) => box(squareAround(at, 0.8), ink.white, stroke(pen.frame))),
    signs: shown.map(({ at }) => squareAround(at, 1)),
    requests: shown.map(({ name, at }): LabelRequest => {
      const style = { sizePt: letters.table, font: 'regular' } as const;
      const block = labelBlock(labelLines(inShort.get(name) ?? name, style, input.measure), input.measure);
      return { priority: 60, places: placesAround(squareAround(at, 1), block), listedAs: name };
    }),
  };
}

/** Width of the opening between its posts, and how far the trench stands off it. */
function dimensions(
  { shape, path, bowAssumed, courses }: CrossingAsBuilt,
  { toPaper }: MapWindow,
  { f, measure }: PackInput,
) {
  const { startPost, endPost } = shape;
  const chord = [startPost, endPost];
  const furthest = path.reduce<{ xy: Xy; offM: number }>(
    (best, xy) => {
      const offM = nearestOnPolyline(xy, chord)!.distanceM;
      return offM > best.offM ? { xy, offM } : best;
    },
    { xy: startPost, offM: 0 },
  );
  const foot = nearestOnPolyline(furthest.xy, chord)!.point;
  const widthLine = chord.map(toPaper);
  const style = { sizePt: letters.table, font: 'italic' } as const;
  const label = (from: readonly PaperPoint[], words: string): LabelRequest => ({
    priority: 50,
    places: [
      ...placesAlongLine([from], words, style, 0.6, measure),
      ...placesAround(
        squareAround([(from[0]![0] + from[1]![0]) / 2, (from[0]![1] + from[1]![1]) / 2], 0.3),
        labelBlock([{ text: words, ...style }], measure),
      ).map((place) => ({ ...place, cost: place.cost + 2 })),
    ],
    listedAs: null,
  });
  const { offAssumed, offChord, opening } = f.words.sheets.card;
  // An assumed bow is no dimension; of several courses none is the one to dimension.
  const off = bowAssumed ? offAssumed : offChord({ offM: furthest.offM });
  const bow =
    furthest.offM >= 0.1 && (bowAssumed || courses.length === 1) ? [toPaper(foot), toPaper(furthest.xy)] : null;
  const width = opening({ widthM: xyDistanceM(startPost, endPost) });
  return {
    items: [
      line(widthLine, stroke(pen.hairline, { ink: ink.soft })),
      ...(bow ? [line(bow, stroke(pen.hairline, { ink: ink.soft, dash: [0.6, 0.6] }))] : []),
    ],
    signs: [],
    requests: [
      label([toPaper(between(startPost, endPost, 0)), toPaper(endPost)], width),
      ...(bow ? [label(bow, off)] : []),
    ],
  };
}

function planFoot(
  scaleDenominator: number,
  inGround: boolean,
  f: Figures,
  [left, top, right, bottom]: PaperBox,
): Item[] {
  const bar = scaleBarFor(scaleDenominator, f.units, 45);
  const { northShaded, northPlanned, hollow } = f.words.sheets.card;
  return [
    line(
      [
        [left, top],
        [right, top],
      ],
      stroke(pen.hairline),
    ),
    text(scaleText(scaleDenominator), [left + 3, bottom - 3], { sizePt: letters.body, font: 'bold' }),
    ...drawScaleBar(bar, [left + 22, top + 4.6]),
    ...[inGround ? northShaded : northPlanned, hollow].map((said, i) =>
      text(said, [right - 3, bottom - 4.8 + 2.8 * i], { sizePt: letters.small, align: 'right', ink: ink.soft }),
    ),
  ];
}
