import type { Item, PaperBox, PaperPoint } from '../../drawing/displayList.ts';
import { type LabelRequest, labelPriority } from '../../drawing/labels/label.ts';
import { labelBlock, labelLines, middleOf } from '../../drawing/labels/labelBlock.ts';
import { placesAround } from '../../drawing/labels/placesAround.ts';
import type { MapWindow } from '../../drawing/mapWindow.ts';
import { crossingSign, spotSign } from '../../drawing/signs/crossingSign.ts';
import { gateSign, magnifiedAbout, openingMagnified } from '../../drawing/signs/gateSign.ts';
import { type OpenSign, squareAround } from '../../drawing/signs/sign.ts';
import { letters } from '../../drawing/style.ts';
import type { MeasureText } from '../../drawing/words.ts';
import { boxesMeet } from '../../geometry/box.ts';
import type { Xy } from '../../geometry/types.ts';
import { leavesOpen } from '../../locate/certainty.ts';
import { basisInShort } from '../../locate/certaintyWords.ts';
import { type CrossingAsBuilt, crossingAt } from '../../locate/crossingAsBuilt.ts';
import { depthAtGateway } from '../../locate/depth.ts';
import { depthLabel } from '../../locate/depthWords.ts';
import { isInTheGround } from '../../locate/inTheGround.ts';
import type { Project } from '../../model/project.ts';
import { pushAll } from '../../model/pushAll.ts';
import type { CrossingFigures, GatewayShape } from '../../shapes/types.ts';
import type { Survey } from '../../survey/types.ts';
import type { Figures } from '../../words/types.ts';
import type { MapLayer } from './layer.ts';

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

/** Gateways with the crossings under or over them; a crossing whose gate was moved where it was dug. */
export function openingLayer(
  project: Project,
  survey: Survey,
  window: MapWindow,
  f: Figures,
  measure: MeasureText,
): MapLayer {
  const items: Item[] = [];
  const signs: PaperBox[] = [];
  const labels: LabelRequest[] = [];
  for (const [id, shape] of survey.gateways) {
    const opening = openingOf(shape, window);
    const figures = survey.crossings.get(id) ?? null;
    const lying = figures && lyingAt(project, survey, figures);
    const dug = lying ? openingOf(lying.shape, window) : opening;
    const [showsGate, showsDug] = [window.shows(opening.middle), window.shows(dug.middle)];
    if (!showsGate && !showsDug) continue;
    const { name } = shape.gateway;
    let covers: PaperBox | null = null;
    if (showsGate) {
      const gate = gateSign(opening.startPost, opening.endPost, shape.gateway, opening.factor > 1);
      pushAll(items, gate.items);
      pushAll(signs, gate.parts);
      covers = gate.covers;
    }
    if (figures) {
      const drawn = crossingDrawn(figures, lying, dug, window);
      pushAll(items, drawn.items);
      pushAll(signs, drawn.parts);
      // A crossing that its gate has left has a name of its own, as far as paper tells the two apart.
      const left = lying !== null && lying.movedM > 0 && !(covers && boxesMeet(covers, drawn.covers));
      if (covers && !left) covers = around(covers, drawn.covers);
      else if (showsDug)
        labels.push(signLabel(f.words.sheets.map.crossingAt({ gateway: name }), drawn.covers, measure));
      if (showsDug && window.scaleDenominator <= depthShownTo && figures.crossing.method === 'buried') {
        const open = lying && leavesOpen(lying.certainty.basis) ? [basisInShort(lying.certainty.basis)] : [];
        const words = [...depthLabel(depthAtGateway(project, survey, figures)), ...open].map(f.say);
        labels.push(depthRequest(drawn.ways[0]!, words, measure));
      }
    }
    if (covers) labels.push(signLabel(name, covers, measure));
  }
  return { items, signs, lines: [], labels };
}

/** A crossing about the opening that it was dug under: every way that it may run, and the places that none leads through. */
function crossingDrawn(
  figures: CrossingFigures,
  lying: CrossingAsBuilt | null,
  dug: Opening,
  { toPaper }: MapWindow,
): OpenSign & { readonly ways: readonly (readonly PaperPoint[])[] } {
  const onPaper = (xy: Xy) => magnifiedAbout(dug.middle, toPaper(xy), dug.factor);
  const { method, status } = figures.crossing;
  const look = { method, status: lying ? ('built' as const) : status };
  const ways = (lying?.courses ?? [figures]).map(({ path }) => path.map(onPaper));
  const courses = ways.map((path) => crossingSign(path, look));
  const spots = (lying?.spots ?? []).map(({ xy }) => spotSign(onPaper(xy), look));
  return {
    ways,
    items: [...courses, ...spots].flatMap((sign) => sign.items),
    parts: [...courses.flatMap(({ parts }) => parts), ...spots.map((spot) => spot.covers)],
    covers: courses.map(({ covers }) => covers).reduce(around),
  };
}

/** The crossing where it lies by its record; null where nothing lies there. */
export function lyingAt(
  project: Project,
  survey: Survey,
  { crossing, gateway }: CrossingFigures,
): CrossingAsBuilt | null {
  return isInTheGround(project, crossing) ? crossingAt(project, survey, gateway.id) : null;
}

function signLabel(name: string, covers: PaperBox, measure: MeasureText): LabelRequest {
  const style = { font: 'regular', sizePt: letters.label } as const;
  return {
    priority: labelPriority.gateway,
    places: placesAround(covers, labelBlock(labelLines(name, style, measure), measure)),
    listedAs: name,
  };
}

function depthRequest(path: readonly PaperPoint[], words: readonly string[], measure: MeasureText): LabelRequest {
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
