import type { PaperPoint } from '../../drawing/displayList.ts';
import { type LabelRequest, labelPriority } from '../../drawing/labels/label.ts';
import { labelBlock, labelLines } from '../../drawing/labels/labelBlock.ts';
import { placesAlongLine, placesOnLine } from '../../drawing/labels/placesAlong.ts';
import { placesAround } from '../../drawing/labels/placesAround.ts';
import { placesInside } from '../../drawing/labels/placesInside.ts';
import type { MapWindow } from '../../drawing/mapWindow.ts';
import { squareAround } from '../../drawing/signs/sign.ts';
import { pathLength } from '../../drawing/strokes/marksAlong.ts';
import { serviceLetters, serviceLettersEveryMm } from '../../drawing/strokes/services.ts';
import { ink, letters } from '../../drawing/style.ts';
import type { MeasureText } from '../../drawing/words.ts';
import type { Project } from '../../model/project.ts';
import type { Service } from '../../model/things.ts';
import type { Figures } from '../../words/types.ts';
import { drawService } from './drawService.ts';
import { emptyLayer, type MapLayer, mergeLayers } from './layer.ts';

const nameStyle = { font: 'italic', sizePt: letters.label, ink: ink.soft } as const;
const letterStyle = { font: 'regular', sizePt: letters.small, ink: ink.soft } as const;

/** Power lines, pipes, roads, water: what else is there, with its name and what it is. */
export function serviceLayer(project: Project, window: MapWindow, f: Figures, measure: MeasureText): MapLayer {
  return mergeLayers([...project.service.values()].map((service) => oneService(service, window, f, measure)));
}

function oneService(service: Service, window: MapWindow, f: Figures, measure: MeasureText): MapLayer {
  const items = drawService(service, window);
  if (items.length === 0) return emptyLayer;
  const path = service.path.map(window.placeToPaper);
  const name = serviceTitle(service, f);
  if (path.length === 1) {
    const covers = squareAround(path[0]!, 1.6);
    const block = labelBlock(labelLines(name, nameStyle, measure), measure);
    const label = { priority: labelPriority.service, places: placesAround(covers, block), listedAs: name };
    return { items, signs: [covers], lines: [], labels: [label] };
  }
  const pieces = window.clipPaper(path);
  if (service.what === 'floodZone') {
    const block = labelBlock(labelLines(name, nameStyle, measure), measure);
    const places = placesInside(path, null, window.frame, [block]);
    return { items, signs: [], lines: [], labels: [{ priority: labelPriority.service, places, listedAs: name }] };
  }
  const label: LabelRequest = {
    priority: labelPriority.service,
    places: placesAlongLine(pieces, name, nameStyle, service.what === 'road' ? 1.3 : 0.9, measure),
    listedAs: name,
    mostCost: 4,
  };
  return { items, signs: [], lines: pieces, labels: [label, ...lineLetters(service, pieces, f)] };
}

/** "Northern supply, power line"; a name that says what it is stands alone. */
function serviceTitle({ name, what }: Service, f: Figures): string {
  const kind = f.words.sheets.map.services[what];
  if (name.trim() === '') return kind;
  return name.toLowerCase().includes(kind) ? name.trim() : f.words.sheets.map.service({ name: name.trim(), what });
}

function lineLetters(service: Service, pieces: readonly (readonly PaperPoint[])[], f: Figures): LabelRequest[] {
  const words = serviceLetters(service, f);
  if (words === null) return [];
  return pieces.flatMap((piece) => {
    const lengthMm = pathLength(piece);
    const count = Math.max(1, Math.round(lengthMm / serviceLettersEveryMm));
    return Array.from(
      { length: count },
      (_, i): LabelRequest => ({
        priority: labelPriority.serviceLetters,
        places: placesOnLine(piece, words, letterStyle, ((i + 0.5) / count) * lengthMm, lengthMm / count / 3, true),
        listedAs: null,
      }),
    );
  });
}
