import type { Item } from '../../drawing/displayList.ts';
import type { MapWindow } from '../../drawing/mapWindow.ts';
import { floodZone, serviceLine, servicePoint } from '../../drawing/strokes/services.ts';
import type { Service } from '../../model/things.ts';

/** A service as far as the map reaches: the line or area itself; its words are labels. */
export function drawService(service: Service, window: MapWindow): Item[] {
  const path = service.path.map(window.placeToPaper);
  const only = path[0];
  if (!only) return [];
  if (path.length === 1) return window.shows(only) ? servicePoint(service.what, only) : [];
  if (service.what === 'floodZone') return floodZone(path, window.frame, window.clipPaper);
  return window.clipPaper(path).flatMap((piece) => serviceLine(service, piece));
}
