import { formatArea, type Units } from '../../model/formatUnits.ts';
import type { Survey } from '../../registers/types.ts';
import { type LabelWish, labelPriority } from '../labels/label.ts';
import { type LabelLine, labelBlock, labelLines } from '../labels/labelBlock.ts';
import { boxAroundPaper } from '../signs/sign.ts';
import { ink, letters } from '../style.ts';
import type { MeasureText } from '../words.ts';
import type { MapLayer } from './layer.ts';
import type { MapWindow } from './mapWindow.ts';
import { placesInside } from './placesInside.ts';

/** Names of the paddocks with their areas. One that the sheet shows only a rim of is named on the next. */
export function paddockLayer(survey: Survey, window: MapWindow, units: Units, measure: MeasureText): MapLayer {
  const labels: LabelWish[] = [];
  for (const paddock of survey.paddocks) {
    const ring = paddock.ring.map(window.toPaper);
    const [left, top, right, bottom] = boxAroundPaper(ring, 0);
    const [mapLeft, mapTop, mapRight, mapBottom] = window.frame;
    if (right < mapLeft || left > mapRight || bottom < mapTop || top > mapBottom) continue;
    const heart = window.toPaper(paddock.inside);
    const home = window.shows(heart);
    const area: LabelLine = {
      font: 'regular',
      sizePt: letters.small,
      ink: ink.soft,
      text: formatArea(paddock.areaM2, units),
    };
    const named = labelLines(paddock.name, { font: 'regular', sizePt: 8 }, measure);
    const small = labelLines(paddock.name, { font: 'regular', sizePt: letters.small }, measure);
    const blocks = [
      labelBlock([...named, area], measure),
      labelBlock([...small, area], measure),
      labelBlock(small, measure),
    ];
    labels.push({
      priority: labelPriority.paddock,
      places: placesInside(ring, home ? heart : null, window.frame, blocks),
      listedAs: home ? `${paddock.name} (${area.text})` : null,
    });
  }
  return { items: [], signs: [], lines: [], labels };
}
