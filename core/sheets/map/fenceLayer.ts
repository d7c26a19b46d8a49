import type { PaperPoint } from '../../drawing/displayList.ts';
import { type LabelRequest, labelPriority } from '../../drawing/labels/label.ts';
import { labelBlock } from '../../drawing/labels/labelBlock.ts';
import { placesAlongLine, placesOnLine } from '../../drawing/labels/placesAlong.ts';
import { placesAround } from '../../drawing/labels/placesAround.ts';
import type { MapWindow } from '../../drawing/mapWindow.ts';
import { squareAround } from '../../drawing/signs/sign.ts';
import { drawDeadFence, drawFence, sectionMarks } from '../../drawing/strokes/fence.ts';
import { pathLength } from '../../drawing/strokes/marksAlong.ts';
import { fenceWidthMm, letters } from '../../drawing/style.ts';
import type { MeasureText } from '../../drawing/words.ts';
import type { Survey } from '../../survey/types.ts';
import type { Figures } from '../../words/types.ts';
import { type FenceStretch, fenceStretches } from './fenceStretches.ts';
import type { MapLayer } from './layer.ts';

/** A stretch of fence as far as the map shows it. */
interface ShownStretch {
  readonly stretch: FenceStretch;
  readonly pieces: readonly (readonly PaperPoint[])[];
}

/** Fence lines by section, strong where built, thin where planned; letters of the sections and names of the lines. */
export function fenceLayer(survey: Survey, window: MapWindow, f: Figures, measure: MeasureText): MapLayer {
  const widthMm = fenceWidthMm(window.scaleDenominator);
  const shown = fenceStretches(survey)
    .map((stretch): ShownStretch => ({ stretch, pieces: window.clip(stretch.path) }))
    .filter(({ pieces }) => pieces.length > 0);
  return {
    items: shown.flatMap(({ stretch, pieces }) => pieces.flatMap((piece) => drawStretch(stretch, piece, widthMm))),
    signs: [],
    lines: shown.flatMap(({ pieces }) => pieces),
    labels: [...sectionLetters(shown, f, measure), ...lineNames(shown, measure)],
  };
}

function drawStretch({ shape, section }: FenceStretch, piece: readonly PaperPoint[], widthMm: number) {
  const { live, status } = shape.line;
  if (!live || !section) return drawDeadFence(piece, status);
  return drawFence(piece, status, widthMm, sectionMarks(section.index));
}

const letterEveryMm = 65;
const firstSlideMm = 24;
const letterStyle = { font: 'bold', sizePt: letters.sectionLetter } as const;

/** One letter for each section on the longest piece of it, and again along every long piece. */
function sectionLetters(shown: readonly ShownStretch[], f: Figures, measure: MeasureText): LabelRequest[] {
  const bySection = Map.groupBy(
    shown.filter(({ stretch }) => stretch.section !== null),
    ({ stretch }) => stretch.section!,
  );
  return [...bySection].flatMap(([section, stretches]) => {
    const pieces = stretches
      .flatMap(({ pieces }) => pieces)
      .map((path) => ({ path, lengthMm: pathLength(path) }))
      .sort((a, b) => b.lengthMm - a.lengthMm);
    const longest = pieces[0]!;
    const block = labelBlock([{ ...letterStyle, text: section.letter }], measure);
    const inLine = pieces.slice(0, 3).flatMap(({ path, lengthMm }, rank) =>
      placesOnLine(path, section.letter, letterStyle, lengthMm / 2, Math.min(lengthMm / 2, firstSlideMm), false).map(
        (place) => ({
          ...place,
          cost: place.cost + rank,
        }),
      ),
    );
    const beside = placesAround(squareAround(longest.path[Math.floor(longest.path.length / 2)]!, 0.6), block);
    const first: LabelRequest = {
      priority: labelPriority.sectionLetter,
      places: [...inLine, ...beside.map((place) => ({ ...place, cost: place.cost + 8 }))],
      listedAs: f.words.sheets.map.section({ letter: section.letter }),
    };
    return [
      first,
      ...pieces.flatMap(({ path, lengthMm }, rank) => repeats(section.letter, path, lengthMm, rank === 0)),
    ];
  });
}

/** Further letters along a piece, evenly spread. On the piece that bears the first letter, halfway between it and the ends. */
function repeats(letter: string, path: readonly PaperPoint[], lengthMm: number, first: boolean): LabelRequest[] {
  const count = first ? 2 * Math.floor(lengthMm / (2 * letterEveryMm)) : Math.floor(lengthMm / letterEveryMm + 0.5);
  return Array.from({ length: count }, (_, i): LabelRequest => {
    const share = (first && i >= count / 2 ? i + 1 : i) + 0.5;
    const atMm = (share / (first ? count + 1 : count)) * lengthMm;
    const slideMm = lengthMm / (count + 1) / 2.5;
    return {
      priority: labelPriority.sectionAgain,
      places: placesOnLine(path, letter, letterStyle, atMm, slideMm, false),
      listedAs: null,
    };
  });
}

const nameStyle = { font: 'italic', sizePt: letters.small } as const;

function lineNames(shown: readonly ShownStretch[], measure: MeasureText): LabelRequest[] {
  const byLine = Map.groupBy(shown, ({ stretch }) => stretch.shape);
  return [...byLine]
    .filter(([{ line }]) => line.name.trim() !== '')
    .map(
      ([{ line }, stretches]): LabelRequest => ({
        priority: labelPriority.line,
        places: placesAlongLine(
          stretches.flatMap(({ pieces }) => pieces),
          line.name,
          nameStyle,
          1.3,
          measure,
        ),
        listedAs: line.name,
        mostCost: 3,
      }),
    );
}
