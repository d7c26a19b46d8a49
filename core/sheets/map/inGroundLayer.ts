import type { Item, PaperBox, PaperPoint } from '../../drawing/displayList.ts';
import { type LabelRequest, labelPriority } from '../../drawing/labels/label.ts';
import { labelBlock, labelLines } from '../../drawing/labels/labelBlock.ts';
import { placesAround } from '../../drawing/labels/placesAround.ts';
import type { MapWindow } from '../../drawing/mapWindow.ts';
import { circle, line, lines, stroke } from '../../drawing/paint.ts';
import { spotSign } from '../../drawing/signs/crossingSign.ts';
import { squareAround } from '../../drawing/signs/sign.ts';
import { marksAlong } from '../../drawing/strokes/marksAlong.ts';
import { ink, letters } from '../../drawing/style.ts';
import type { MeasureText } from '../../drawing/words.ts';
import { type LeftInGround, leftInGround } from '../../locate/inGround/leftInGround.ts';
import { fateInShort } from '../../locate/inGround/leftWords.ts';
import type { Project } from '../../model/project.ts';
import type { Survey } from '../../survey/types.ts';
import type { MapLayer } from './layer.ts';
import { buriedDashMm } from './supplyLayer.ts';

const crossSpacingMm = 5;
const crossMm = 0.7;
const signMm = 1.2;

/** What is left in the ground, every way that it may lie: dashed, crossed where it is dead, with a sign in its middle and what it is. */
export function inGroundLayer(project: Project, survey: Survey, window: MapWindow, measure: MeasureText): MapLayer {
  const items: Item[] = [];
  const signs: PaperBox[] = [];
  const paths: PaperPoint[][] = [];
  const labels: LabelRequest[] = [];
  for (const left of leftInGround(project, survey)) {
    if (left.thing.fate === 'takenOut') continue;
    const pieces = left.ways.flatMap((way) => (way.length > 1 ? window.clip(way) : []));
    const middle = window.toPaper(left.path[left.path.length >> 1] ?? [0, 0]);
    items.push(...drawn(left, pieces));
    const spots = left.ways.flatMap((way) => (way.length === 1 ? [window.toPaper(way[0]!)] : []));
    for (const spot of spots) if (window.shows(spot)) items.push(...spotSign(spot, { status: 'built' }).items);
    paths.push(...pieces);
    if (!window.shows(middle)) continue;
    const dead = left.thing.fate === 'dead';
    items.push(...inGroundSign(middle, dead));
    const covers = squareAround(middle, signMm);
    signs.push(covers);
    const words = `${left.thing.name}: ${fateInShort(left.thing)}`;
    const block = labelBlock(labelLines(words, { font: 'regular', sizePt: letters.label }, measure), measure);
    labels.push({ priority: labelPriority.gateway, places: placesAround(covers, block), listedAs: words });
  }
  return { items, signs, lines: paths, labels };
}

function drawn({ thing }: LeftInGround, pieces: readonly PaperPoint[][]): Item[] {
  if (pieces.length === 0) return [];
  const dashes = lines(pieces, stroke(0.35, { dashMm: buriedDashMm }));
  if (thing.fate !== 'dead') return [dashes];
  const crosses = pieces.flatMap((piece) => marksAlong(piece, crossSpacingMm).flatMap(({ at }) => cross(at, crossMm)));
  return [dashes, ...crosses];
}

/** A disc with a cross (dead) or an upright stroke over a point (may be live). */
export function inGroundSign(at: PaperPoint, dead: boolean): Item[] {
  const disc = circle(at, signMm, ink.white, stroke(0.25));
  if (dead) return [disc, ...cross(at, signMm * 0.55)];
  const [x, y] = at;
  return [
    disc,
    line(
      [
        [x, y - signMm * 0.65],
        [x, y + signMm * 0.15],
      ],
      stroke(0.3),
    ),
    circle([x, y + signMm * 0.55], 0.15, ink.black),
  ];
}

function cross([x, y]: PaperPoint, mm: number): Item[] {
  return [
    line(
      [
        [x - mm, y - mm],
        [x + mm, y + mm],
      ],
      stroke(0.25),
    ),
    line(
      [
        [x - mm, y + mm],
        [x + mm, y - mm],
      ],
      stroke(0.25),
    ),
  ];
}
