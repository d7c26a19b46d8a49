import type { PaperPoint } from '../../drawing/displayList.ts';
import { type LabelPlace, type LabelRequest, labelPriority } from '../../drawing/labels/label.ts';
import { type LabelBlock, type LabelLine, labelBlock, labelLines } from '../../drawing/labels/labelBlock.ts';
import { placesAround } from '../../drawing/labels/placesAround.ts';
import { placesInside } from '../../drawing/labels/placesInside.ts';
import type { MapWindow } from '../../drawing/mapWindow.ts';
import { boxAroundPaper, squareAround } from '../../drawing/signs/sign.ts';
import { ink, letters } from '../../drawing/style.ts';
import type { MeasureText } from '../../drawing/words.ts';
import { middleOf } from '../../survey/paddocks.ts';
import type { Survey } from '../../survey/types.ts';
import type { Figures } from '../../words/types.ts';
import type { MapLayer } from './layer.ts';

/** Names of the paddocks with their areas. One that the sheet shows only a rim of is named on the next. */
export function paddockLayer(survey: Survey, window: MapWindow, f: Figures, measure: MeasureText): MapLayer {
  const labels: LabelRequest[] = [];
  const { unnamedPaddock, withArea } = f.words.sheets.map;
  for (const paddock of survey.paddocks) {
    const ring = paddock.ring.map(window.toPaper);
    const [left, top, right, bottom] = boxAroundPaper(ring, 0);
    const [mapLeft, mapTop, mapRight, mapBottom] = window.frame;
    if (right < mapLeft || left > mapRight || bottom < mapTop || top > mapBottom) continue;
    const heart = window.toPaper(middleOf(paddock));
    const home = window.shows(heart);
    const area: LabelLine = {
      font: 'regular',
      sizePt: letters.small,
      ink: ink.soft,
      text: f.area(paddock.areaM2),
    };
    const blocks = paddock.name === null ? [labelBlock([area], measure)] : namedBlocks(paddock.name, area, measure);
    labels.push({
      priority: labelPriority.paddock,
      places: [
        ...placesInside(ring, home ? heart : null, window.frame, blocks),
        ...(home ? outside(heart, blocks) : []),
      ],
      listedAs: home ? withArea({ name: paddock.name ?? unnamedPaddock, area: area.text }) : null,
    });
  }
  return { items: [], signs: [], lines: [], labels };
}

function namedBlocks(name: string, area: LabelLine, measure: MeasureText): LabelBlock[] {
  const named = labelLines(name, { font: 'regular', sizePt: 8 }, measure);
  const small = labelLines(name, { font: 'regular', sizePt: letters.small }, measure);
  return [labelBlock([...named, area], measure), labelBlock([...small, area], measure), labelBlock(small, measure)];
}

/** Where a paddock is too small or too narrow for its name: beside it, with a leader that ends in it. */
function outside(heart: PaperPoint, blocks: readonly LabelBlock[]): LabelPlace[] {
  const smallest = blocks.at(-1);
  if (!smallest) return [];
  return placesAround(squareAround(heart, 0.1), smallest)
    .filter(({ leader }) => leader !== null)
    .map((place) => ({ ...place, cost: place.cost + 4 }));
}
