import type { Item, PaperBox, PaperPoint } from '../../drawing/displayList.ts';
import { firstFree, leaderTo } from '../../drawing/labels/freePlace.ts';
import { type LabelRequest, labelPriority } from '../../drawing/labels/label.ts';
import { labelBlock, labelLines } from '../../drawing/labels/labelBlock.ts';
import { placesAround } from '../../drawing/labels/placesAround.ts';
import type { MapWindow } from '../../drawing/mapWindow.ts';
import { paperDirection, paperShift, squareAround } from '../../drawing/signs/sign.ts';
import { switchRadiusMm, switchSign } from '../../drawing/signs/switchSign.ts';
import { letters } from '../../drawing/style.ts';
import type { MeasureText } from '../../drawing/words.ts';
import { pushAll } from '../../model/pushAll.ts';
import type { Survey, SwitchRow } from '../../survey/types.ts';
import type { MapLayer } from './layer.ts';
import { openingOf } from './openingLayer.ts';

/**
 * Cut-out switches. One at a gateway stands in the run just outside the post that it belongs to; where another sign
 * is in the way it stands off, and a hairline leads to its place.
 */
export function switchLayer(
  survey: Survey,
  window: MapWindow,
  taken: readonly PaperBox[],
  measure: MeasureText,
): MapLayer {
  const items: Item[] = [];
  const signs: PaperBox[] = [];
  const labels: LabelRequest[] = [];
  for (const row of survey.switches) {
    const place = window.toPaper(row.xy);
    if (!window.shows(place)) continue;
    const wanted = standsAt(row, survey, window, place);
    const covers = (spot: PaperPoint) => squareAround(spot, switchRadiusMm + 0.15);
    const spot = firstFree(wanted, covers, [...taken, ...signs], window);
    const along = paperDirection([0, 0], [row.along[0], -row.along[1]]);
    const sign = switchSign(spot, along, row.switch);
    pushAll(items, spot === wanted ? [] : leaderTo(wanted, spot), sign.items);
    signs.push(sign.covers);
    const block = labelBlock(labelLines(row.switch.name, { font: 'bold', sizePt: letters.label }, measure), measure);
    labels.push({
      priority: labelPriority.switch,
      places: placesAround(sign.covers, block),
      listedAs: row.switch.name,
    });
  }
  return { items, signs, lines: [], labels };
}

/** Where the sign would best stand: clear of the gateway or the junction that its place is at. */
function standsAt(row: SwitchRow, survey: Survey, window: MapWindow, place: PaperPoint): PaperPoint {
  const where = row.switch.place;
  if (where.on === 'gateway') {
    const shape = survey.gateways.get(where.gatewayId);
    if (!shape) return place;
    const opening = openingOf(shape, window);
    const post = where.post === 'start' ? opening.startPost : opening.endPost;
    return paperShift(post, paperDirection(opening.middle, post), switchRadiusMm + 0.9);
  }
  if (where.on === 'lineEnd') {
    const shape = survey.lines.get(where.lineId);
    const end = where.end === 'start' ? shape?.xy[0] : shape?.xy.at(-1);
    const next = where.end === 'start' ? shape?.xy[1] : shape?.xy.at(-2);
    if (!end || !next) return place;
    return paperShift(
      window.toPaper(end),
      paperDirection(window.toPaper(end), window.toPaper(next)),
      switchRadiusMm + 0.6,
    );
  }
  return place;
}
