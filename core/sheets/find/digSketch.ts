import type { Item, PaperBox, PaperPoint } from '../../drawing/displayList.ts';
import type { LabelRequest } from '../../drawing/labels/label.ts';
import { labelBlock } from '../../drawing/labels/labelBlock.ts';
import { placeLabels } from '../../drawing/labels/placeLabels.ts';
import { placesAround } from '../../drawing/labels/placesAround.ts';
import { mapWindow } from '../../drawing/mapWindow.ts';
import { mayLie } from '../../drawing/mayLie.ts';
import { box, circle, figure, line, lines, polygon, stroke } from '../../drawing/paint.ts';
import { northArrow } from '../../drawing/signs/northArrow.ts';
import { drawScaleBar, scaleBarFor } from '../../drawing/signs/scaleBar.ts';
import { squareAround } from '../../drawing/signs/sign.ts';
import { trenchStroke } from '../../drawing/strokes/buried.ts';
import { ink, letters, pen } from '../../drawing/style.ts';
import { boxAround, growBox } from '../../geometry/box.ts';
import type { Xy } from '../../geometry/types.ts';
import { type Dig, type DigAnswer, type DigFinding, numbered } from '../../locate/digCheck.ts';
import { roundScales, scaleText } from '../scales.ts';
import type { Sketch, SketchInput } from './stakeSketch.ts';

const scales = [25, 50, 75, ...roundScales];

/** The dig and everything named near it, from above, in true proportions; numbers as in the table. */
export function digSketch(dig: Dig, answer: DigAnswer, frame: PaperBox, input: SketchInput): Sketch {
  const { survey, f, measure } = input;
  const [left, top, right, bottom] = frame;
  const path = dig.path.map(survey.plane.toXy);
  const nearest = answer.findings.map((finding) => finding.nearest);
  const extent = growBox(boxAround([...path, ...nearest])!, Math.max(3, dig.withinM * 0.4, dig.errorM * 1.2));
  const [widthM, heightM] = [extent[2] - extent[0], extent[3] - extent[1]];
  const scaleDenominator =
    scales.find(
      (scale) => (widthM * 1000) / scale <= right - left - 6 && (heightM * 1000) / scale <= bottom - top - 12,
    ) ?? 1e6;
  const centre: Xy = [(extent[0] + extent[2]) / 2, (extent[1] + extent[3]) / 2];
  const window = mapWindow(frame, centre, scaleDenominator, survey.plane);
  const digPaper = path.map(window.toPaper);
  const things = numbered(answer).map(({ finding, number }) => ({
    finding,
    number,
    paths: finding.thing.ways.flatMap(({ path }) => (path.length > 1 ? window.clip(path) : [])),
    at: window.toPaper(finding.nearest),
  }));
  const bar = scaleBarFor(scaleDenominator, f.units, 40);
  const fences = [...survey.lines.values()].flatMap(({ xy }) => window.clip(xy));
  const shape = digShape(dig, digPaper, window.mmPerM);
  const requests = things.map(({ number, at }): LabelRequest => {
    const block = labelBlock([{ text: number, font: 'bold', sizePt: letters.heading }], measure);
    return { priority: 100, places: placesAround(squareAround(at, 1), block), listedAs: null };
  });
  const bars: PaperBox = [left + 2, bottom - 8, left + 6 + bar.length, bottom];
  const labels = placeLabels(requests, {
    frame,
    signs: [...things.map(({ at }) => squareAround(at, 1)), bars],
    lines: [...things.flatMap(({ paths }) => paths), digPaper],
    measure,
  });
  const items: Item[] = [
    {
      kind: 'clip',
      box: frame,
      items: [
        // What is only planned lies nowhere, so there is no ground that it may lie in.
        ...things.flatMap(({ finding: { thing } }) => (thing.inGround ? mayLie(thing.ways, window) : [])),
        ...shape,
        lines(fences, stroke(0.35)),
        ...things.flatMap(({ paths, finding }) => (paths.length > 0 ? [lines(paths, thingStroke(finding))] : [])),
        ...things.map(({ at, finding }) => circle(at, 1, finding.overlap ? ink.black : ink.white, stroke(pen.frame))),
      ],
    },
    ...northArrow([right - 5, top + 17]),
    ...labels.placed.flatMap(({ texts, leader }) => [
      ...(leader ? [line(leader, stroke(pen.hairline))] : []),
      ...texts,
    ]),
    box(bars, ink.white),
    ...drawScaleBar(bar, [left + 4, bottom - 4]),
    box(frame, null, stroke(pen.sign)),
  ];
  const plan = f.words.sheets.dig.plan({ scale: scaleText(scaleDenominator) });
  return { items: [figure(plan, items)], scaleDenominator };
}

function thingStroke({ thing }: DigFinding) {
  return trenchStroke(thing.inGround);
}

/** The dig with its own error as a thin rim. */
function digShape({ shape, errorM }: Dig, path: readonly PaperPoint[], mmPerM: number): Item[] {
  const first = path[0];
  if (!first) return [];
  if (shape === 'point') {
    return [circle(first, Math.max(0.6, errorM * mmPerM), null, stroke(pen.frame, { dash: [1, 1] })), ...cross(first)];
  }
  if (shape === 'area' && path.length > 2) return [polygon(path, null, stroke(0.9))];
  return [line(path, stroke(0.9))];
}

function cross([x, y]: PaperPoint): Item[] {
  return [
    lines(
      [
        [
          [x - 2.5, y - 2.5],
          [x + 2.5, y + 2.5],
        ],
        [
          [x - 2.5, y + 2.5],
          [x + 2.5, y - 2.5],
        ],
      ],
      stroke(0.7),
    ),
  ];
}
