import type { Item, PaperBox, PaperPoint } from '../../drawing/displayList.ts';
import { firstFree, leaderTo } from '../../drawing/labels/freePlace.ts';
import { type LabelRequest, labelPriority } from '../../drawing/labels/label.ts';
import { labelBlock, labelLines } from '../../drawing/labels/labelBlock.ts';
import { placesAround } from '../../drawing/labels/placesAround.ts';
import type { MapWindow } from '../../drawing/mapWindow.ts';
import { lines } from '../../drawing/paint.ts';
import { earthSign } from '../../drawing/signs/earthSign.ts';
import { energiserSign } from '../../drawing/signs/energiserSign.ts';
import { leadOutStroke } from '../../drawing/strokes/buried.ts';
import { letters } from '../../drawing/style.ts';
import type { MeasureText } from '../../drawing/words.ts';
import type { Project } from '../../model/project.ts';
import { pushAll } from '../../model/pushAll.ts';
import type { MapLayer } from './layer.ts';

/** Lead-outs as lines: dashed where buried, thin where only planned. */
export function leadOutLayer(project: Project, window: MapWindow): MapLayer {
  const items: Item[] = [];
  const paths: PaperPoint[][] = [];
  for (const leadOut of project.leadOut.values()) {
    const pieces = window.clipPaper(leadOut.path.map(window.placeToPaper));
    if (pieces.length === 0) continue;
    items.push(lines(pieces, leadOutStroke(leadOut)));
    pushAll(paths, pieces);
  }
  return { items, signs: [], lines: paths, labels: [] };
}

/** Energisers where they stand, and their earth stakes as near to their place as there is room. */
export function supplyLayer(project: Project, window: MapWindow, measure: MeasureText): MapLayer {
  const items: Item[] = [];
  const signs: PaperBox[] = [];
  const labels: LabelRequest[] = [];
  for (const { at, name, status } of project.energiser.values()) {
    const place = window.placeToPaper(at);
    if (!window.shows(place)) continue;
    const sign = energiserSign(place, status);
    pushAll(items, sign.items);
    signs.push(sign.covers);
    const block = labelBlock(labelLines(name, { font: 'bold', sizePt: letters.label }, measure), measure);
    labels.push({ priority: labelPriority.energiser, places: placesAround(sign.covers, block), listedAs: name });
  }
  for (const { at, status } of project.earthField.values()) {
    const place = window.placeToPaper(at);
    if (!window.shows(place)) continue;
    const free = firstFree(place, (spot) => earthSign(spot, status).covers, signs, window);
    const sign = earthSign(free, status);
    pushAll(items, leaderTo(place, free), sign.items);
    signs.push(sign.covers);
  }
  return { items, signs, lines: [], labels };
}
