import { leavesOpen } from '../../locate/certainty.ts';
import { basisWords } from '../../locate/certaintyWords.ts';
import { type CrossingAsBuilt, crossingAt } from '../../locate/crossingAsBuilt.ts';
import { depthAtGateway } from '../../locate/depth.ts';
import { depthLabel } from '../../locate/depthWords.ts';
import { isInTheGround } from '../../locate/inTheGround.ts';
import type { Units } from '../../model/formatUnits.ts';
import type { Project } from '../../model/project.ts';
import type { CrossingFigures, GatewayShape, Survey } from '../../registers/types.ts';
import type { Item, PaperBox, PaperPoint } from '../displayList.ts';
import { type LabelWish, labelPriority } from '../labels/label.ts';
import { labelBlock, labelLines, middleOf } from '../labels/labelBlock.ts';
import { placesAround } from '../labels/placesAround.ts';
import { crossingSign } from '../signs/crossingSign.ts';
import { gateSign, magnifiedAbout, openingMagnified } from '../signs/gateSign.ts';
import { squareAround } from '../signs/sign.ts';
import { letters } from '../style.ts';
import type { MeasureText } from '../words.ts';
import type { MapLayer } from './layer.ts';
import type { MapWindow } from './mapWindow.ts';

/** A gateway as it stands on the page, its opening shown no narrower than can be seen. */
export interface Opening {
  readonly shape: GatewayShape;
  readonly middle: PaperPoint;
  readonly startPost: PaperPoint;
  readonly endPost: PaperPoint;
  readonly factor: number;
}

export function openingOf(shape: GatewayShape, window: MapWindow): Opening {
  const middle = window.toPaper(shape.centre);
  const [start, end] = [window.toPaper(shape.startPost), window.toPaper(shape.endPost)];
  const factor = openingMagnified(start, end);
  return {
    shape,
    middle,
    factor,
    startPost: magnifiedAbout(middle, start, factor),
    endPost: magnifiedAbout(middle, end, factor),
  };
}

/** From this scale on the depth stands beside each buried crossing. */
const depthShownTo = 500;

/** Gateways with the crossings under or over them. */
export function openingLayer(
  project: Project,
  survey: Survey,
  window: MapWindow,
  units: Units,
  measure: MeasureText,
): MapLayer {
  const items: Item[] = [];
  const signs: PaperBox[] = [];
  const labels: LabelWish[] = [];
  for (const [id, shape] of survey.gateways) {
    const opening = openingOf(shape, window);
    if (!window.shows(opening.middle)) continue;
    const gate = gateSign(opening.startPost, opening.endPost, shape.gateway, opening.factor > 1);
    items.push(...gate.items);
    signs.push(...gate.parts);
    let covers = gate.covers;
    const figures = survey.crossings.get(id);
    if (figures) {
      const lying = lyingAt(project, survey, figures);
      const ways = (lying?.courses ?? [figures]).map(({ path }) =>
        path.map((xy) => magnifiedAbout(opening.middle, window.toPaper(xy), opening.factor)),
      );
      const look = { method: figures.crossing.method, status: lying ? ('built' as const) : figures.crossing.status };
      for (const path of ways) {
        const sign = crossingSign(path, look);
        items.push(...sign.items);
        signs.push(...sign.parts);
        covers = around(covers, sign.covers);
      }
      if (window.scaleDenominator <= depthShownTo && figures.crossing.method === 'buried') {
        const open = lying && leavesOpen(lying.certainty.basis) ? [basisWords[lying.certainty.basis]] : [];
        const words = [...depthLabel(depthAtGateway(project, survey, figures), units), ...open];
        labels.push(depthWish(ways[0]!, words, measure));
      }
    }
    labels.push(gatewayLabel(shape.gateway.name, covers, measure));
  }
  return { items, signs, lines: [], labels };
}

/** The crossing where it lies by its record; null where nothing lies there. */
function lyingAt(project: Project, survey: Survey, { crossing, gateway }: CrossingFigures): CrossingAsBuilt | null {
  return isInTheGround(project, crossing) ? crossingAt(project, survey, gateway.id) : null;
}

function gatewayLabel(name: string, covers: PaperBox, measure: MeasureText): LabelWish {
  const style = { font: 'regular', sizePt: letters.label } as const;
  return {
    priority: labelPriority.gateway,
    places: placesAround(covers, labelBlock(labelLines(name, style, measure), measure)),
    listedAs: name,
  };
}

function depthWish(path: readonly PaperPoint[], words: readonly string[], measure: MeasureText): LabelWish {
  const lowest = path[Math.floor(path.length / 2)] ?? middleOf([0, 0, 0, 0]);
  const lines = words.map((text) => ({ font: 'regular', sizePt: letters.small, text }) as const);
  return {
    priority: labelPriority.crossingDepth,
    places: placesAround(squareAround(lowest, 0.3), labelBlock(lines, measure)),
    listedAs: null,
  };
}

function around(a: PaperBox, b: PaperBox): PaperBox {
  return [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[2], b[2]), Math.max(a[3], b[3])];
}
