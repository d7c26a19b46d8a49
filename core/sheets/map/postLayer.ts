import type { Item, PaperBox } from '../../drawing/displayList.ts';
import { type LabelRequest, labelPriority } from '../../drawing/labels/label.ts';
import { labelBlock, labelLines } from '../../drawing/labels/labelBlock.ts';
import { placesAround } from '../../drawing/labels/placesAround.ts';
import type { MapWindow } from '../../drawing/mapWindow.ts';
import { postSign } from '../../drawing/signs/postSign.ts';
import { letters } from '../../drawing/style.ts';
import type { MeasureText } from '../../drawing/words.ts';
import type { Project } from '../../model/project.ts';
import { pushAll } from '../../model/pushAll.ts';
import type { MapLayer } from './layer.ts';

/** Posts that tapes are measured from. */
export function postLayer(project: Project, window: MapWindow, measure: MeasureText): MapLayer {
  const items: Item[] = [];
  const signs: PaperBox[] = [];
  const labels: LabelRequest[] = [];
  for (const { at, role, name } of project.post.values()) {
    const place = window.placeToPaper(at);
    if (!window.shows(place)) continue;
    const sign = postSign(place, role);
    pushAll(items, sign.items);
    signs.push(sign.covers);
    if (name.trim() === '') continue;
    const block = labelBlock(labelLines(name, { font: 'italic', sizePt: letters.small }, measure), measure);
    labels.push({ priority: labelPriority.post, places: placesAround(sign.covers, block), listedAs: name });
  }
  return { items, signs, lines: [], labels };
}
