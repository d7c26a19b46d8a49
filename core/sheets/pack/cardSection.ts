import type { Item, PaperBox, PaperPoint } from '../../drawing/displayList.ts';
import { box, circle, figure, line, lines, stroke, text } from '../../drawing/paint.ts';
import { ink, letters, pen } from '../../drawing/style.ts';
import { nearestOnPolyline } from '../../geometry/polyline.ts';
import type { CrossingAsBuilt } from '../../locate/crossingAsBuilt.ts';
import { depthAt, sortedDepths } from '../../locate/depth.ts';
import { largestOf } from '../../model/extremes.ts';
import type { Figures } from '../../words/types.ts';
import { scaleText } from '../scales.ts';
import type { CardPoint } from './cardPoints.ts';

/** Scales of the section, the same both ways; common practice. */
const sectionScales: readonly number[] = [10, 20, 25, 40, 50, 75, 100, 150, 200, 250, 500, 1000];
const sideMm = 16;
const aboveMm = 5;
const belowMm = 12;

/** The trench unrolled along its path and cut open, the same scale along and down: ground, risers, pipe, depths. */
export function cardSection(
  built: CrossingAsBuilt,
  points: readonly CardPoint[],
  [left, top, right, bottom]: PaperBox,
  f: Figures,
): Item {
  const { crossing, gateway } = built.figures;
  const said = f.words.sheets.card;
  const measured = sortedDepths(built.record?.depths ?? [], built.longestM).within;
  const deepestM = Math.max(
    measured.length === 0 ? crossing.depthM : 0,
    largestOf(measured.map(({ depthM }) => depthM)),
  );
  const scale =
    sectionScales.find(
      (each) =>
        (built.lengthM * 1000) / each <= right - left - 2 * sideMm &&
        ((crossing.riserHeightM + deepestM) * 1000) / each <= bottom - top - aboveMm - belowMm,
    ) ?? 2000;
  const mmPerM = 1000 / scale;
  const startX = (left + right - built.lengthM * mmPerM) / 2;
  const groundY = top + aboveMm + crossing.riserHeightM * mmPerM;
  const at = (alongM: number, downM: number): PaperPoint => [startX + alongM * mmPerM, groundY + downM * mmPerM];
  const stations = [...new Set([0, built.lengthM, ...measured.map(({ alongM }) => onTrench(alongM, built))])].sort(
    (a, b) => a - b,
  );
  const pipe = stations.map((alongM) => at(alongM, depthAt(built, alongM).depthM));
  const endDown = depthAt(built, built.lengthM).depthM;
  const risers = [
    [at(0, -crossing.riserHeightM), at(0, depthAt(built, 0).depthM)],
    [at(built.lengthM, -crossing.riserHeightM), at(built.lengthM, endDown)],
  ];
  const depthsShown = measured.length > 0 ? measured : [{ alongM: built.lengthM / 2, depthM: crossing.depthM }];
  const assumed = measured.length === 0;
  const items: Item[] = [
    box([left, top, right, bottom], null, stroke(pen.sign)),
    line(
      [
        [left + 3, groundY],
        [right - 3, groundY],
      ],
      stroke(pen.frame),
    ),
    ...groundMarks(left + 3, right - 3, groundY),
    lines(risers, stroke(0.5)),
    line(pipe, stroke(0.5, { dash: [2.2, 1.1] })),
    ...risers.map(([topEnd]) => circle(topEnd!, 0.7, ink.white, stroke(pen.sign))),
    text(said.riser({ heightM: crossing.riserHeightM }), [startX - 2, (groundY + risers[0]![0]![1]) / 2 + 1], {
      sizePt: letters.table,
      align: 'right',
    }),
    ...depthsShown.flatMap(({ alongM, depthM }) =>
      depthMark(
        at(onTrench(alongM, built), 0),
        at(onTrench(alongM, built), depthM),
        assumed ? said.trenchPlanned({ depthM }) : f.tape(depthM),
      ),
    ),
    ...letterMarks(points, built, (alongM) => at(alongM, 0)[0], bottom - 5.2),
    text(
      (assumed ? said.sectionNotMeasured : said.sectionMeasured)({ scale: scaleText(scale), lengthM: built.lengthM }),
      [left + 3, bottom - 1.4],
      { sizePt: letters.small, ink: ink.soft },
    ),
  ];
  return figure(said.sectionOf({ gateway: gateway.name, scale: scaleText(scale) }), items);
}

/** A tape that ran a little past the end of the trench read at its end. */
function onTrench(alongM: number, { lengthM }: CrossingAsBuilt): number {
  return Math.max(0, Math.min(lengthM, alongM));
}

/** Slanted strokes under the ground line, as on any section. */
function groundMarks(from: number, to: number, y: number): Item[] {
  const strokes: PaperPoint[][] = [];
  for (let x = from + 1; x < to - 1; x += 4)
    strokes.push([
      [x + 1.2, y],
      [x, y + 1.2],
    ]);
  return [lines(strokes, stroke(pen.hairline, { ink: ink.soft }))];
}

function depthMark(ground: PaperPoint, pipe: PaperPoint, words: string): Item[] {
  return [
    line([ground, pipe], stroke(pen.hairline)),
    text(words, [pipe[0], pipe[1] + 3.6], { sizePt: letters.table, font: 'figures', align: 'centre', halo: 0.4 }),
  ];
}

/** The card's letters where its points lie along the trench. */
function letterMarks(
  points: readonly CardPoint[],
  { path }: CrossingAsBuilt,
  xOf: (alongM: number) => number,
  y: number,
): Item[] {
  return points.flatMap(({ letter, places }) => {
    if (!places[0]) return [];
    const { stationM } = nearestOnPolyline(places[0].xy, path)!;
    return text(letter, [xOf(stationM), y], { sizePt: letters.table, font: 'bold', align: 'centre', halo: 0.4 });
  });
}
