import type { Item, PaperBox, PaperPoint } from '../../drawing/displayList.ts';
import { type LabelRequest, labelPriority } from '../../drawing/labels/label.ts';
import { labelBlock, labelLines } from '../../drawing/labels/labelBlock.ts';
import { placesAround } from '../../drawing/labels/placesAround.ts';
import type { MapWindow } from '../../drawing/mapWindow.ts';
import { spotSign } from '../../drawing/signs/crossingSign.ts';
import { inGroundLine, inGroundSign } from '../../drawing/signs/inGroundSign.ts';
import { letters } from '../../drawing/style.ts';
import type { MeasureText } from '../../drawing/words.ts';
import { leftInGround } from '../../locate/inGround/leftInGround.ts';
import { fateInShort } from '../../locate/inGround/leftWords.ts';
import type { Project } from '../../model/project.ts';
import { pushAll } from '../../model/pushAll.ts';
import type { Survey } from '../../survey/types.ts';
import type { Figures } from '../../words/types.ts';
import type { MapLayer } from './layer.ts';

/** What is left in the ground, every way that it may lie: dashed, crossed where it is dead, with a sign in its middle and what it is. */
export function inGroundLayer(
  project: Project,
  survey: Survey,
  window: MapWindow,
  f: Figures,
  measure: MeasureText,
): MapLayer {
  const items: Item[] = [];
  const signs: PaperBox[] = [];
  const paths: PaperPoint[][] = [];
  const labels: LabelRequest[] = [];
  for (const left of leftInGround(project, survey)) {
    if (left.thing.fate === 'takenOut') continue;
    const pieces = left.ways.flatMap((way) => (way.length > 1 ? window.clip(way) : []));
    const middle = window.toPaper(left.path[left.path.length >> 1] ?? [0, 0]);
    pushAll(items, inGroundLine(pieces, left.thing.fate === 'dead'));
    const spots = left.ways.flatMap((way) => (way.length === 1 ? [window.toPaper(way[0]!)] : []));
    for (const spot of spots) if (window.shows(spot)) pushAll(items, spotSign(spot, { status: 'built' }).items);
    pushAll(paths, pieces);
    if (!window.shows(middle)) continue;
    const sign = inGroundSign(middle, left.thing.fate === 'dead');
    pushAll(items, sign.items);
    signs.push(sign.covers);
    const words = f.words.sheets.map.leftThing({ name: left.thing.name, fate: f.say(fateInShort(left.thing)) });
    const block = labelBlock(labelLines(words, { font: 'regular', sizePt: letters.label }, measure), measure);
    labels.push({ priority: labelPriority.gateway, places: placesAround(sign.covers, block), listedAs: words });
  }
  return { items, signs, lines: paths, labels };
}
