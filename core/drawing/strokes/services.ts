import { offsetPolyline } from '../../geometry/polyline.ts';
import { formatVoltage } from '../../model/formatUnits.ts';
import type { Service, ServiceKind } from '../../model/things.ts';
import type { Item, PaperPoint } from '../displayList.ts';
import type { MapWindow } from '../mapWindow.ts';
import { circle, line, lines, stroke } from '../paint.ts';
import { earthSign } from '../signs/earthSign.ts';
import { ink, pen } from '../style.ts';
import { hatchPolygon } from './hatch.ts';

/** What each kind of service is called on paper. */
export const serviceNames: Record<ServiceKind, string> = {
  powerLine: 'power line',
  waterPipe: 'water pipe',
  gasPipe: 'gas pipe',
  dataCable: 'data cable',
  drain: 'drain',
  road: 'road',
  path: 'path',
  creek: 'creek',
  floodZone: 'flood zone',
  earthElectrode: 'other earth',
};

/** Letters set into the lines of services that look alike otherwise. */
const lineLetters: Partial<Record<ServiceKind, string>> = {
  waterPipe: 'W',
  gasPipe: 'GAS',
  dataCable: 'D',
  drain: 'DR',
};

/** The word set into a service's line; a power line carries its voltage. Null: its line says enough. */
export function serviceLetters(service: Pick<Service, 'what' | 'voltageV'>): string | null {
  if (service.what === 'powerLine') return service.voltageV === null ? 'PL' : formatVoltage(service.voltageV);
  return lineLetters[service.what] ?? null;
}

const roadHalfMm = 0.8;
const buriedDashMm = [2.2, 0.8] as const;

/** A service as far as the map reaches: the line or area itself; its words are labels. */
export function drawService(service: Service, window: MapWindow): Item[] {
  const path = service.path.map(window.placeToPaper);
  const only = path[0];
  if (!only) return [];
  if (path.length === 1) return window.shows(only) ? servicePoint(service.what, only) : [];
  if (service.what === 'floodZone') return drawArea(path, window);
  return window.clipPaper(path).flatMap((piece) => serviceLine(service, piece));
}

/** The look of a service's line; also used by the legend. */
export function serviceLine(service: Pick<Service, 'what' | 'buried'>, path: readonly PaperPoint[]): Item[] {
  if (service.what === 'road') {
    const edges = [offsetPolyline(path, roadHalfMm), offsetPolyline(path, -roadHalfMm)];
    return [
      lines([path], stroke(2 * roadHalfMm, { ink: ink.white })),
      lines(edges, stroke(pen.thin, { ink: ink.soft })),
    ];
  }
  if (service.what === 'path') return [line(path, stroke(pen.thin, { ink: ink.soft, dashMm: [1, 0.8] }))];
  if (service.what === 'creek') return [line(path, stroke(0.5, { ink: ink.faint }))];
  if (service.what === 'powerLine' && !service.buried) return powerLine(path);
  return [line(path, stroke(pen.thin, service.buried ? { ink: ink.soft, dashMm: buriedDashMm } : { ink: ink.soft }))];
}

/** Overhead: a hairline with a ring at every corner and end, where its poles may be. */
function powerLine(path: readonly PaperPoint[]): Item[] {
  return [line(path, stroke(pen.thin)), ...path.map((point) => circle(point, 0.4, ink.black))];
}

/** A service drawn as a point; also used by the legend. */
export function servicePoint(what: ServiceKind, at: PaperPoint): Item[] {
  if (what === 'earthElectrode') return [...earthSign(at, 'planned').items];
  return [circle(at, 0.7, ink.white, stroke(pen.sign)), circle(at, 0.25, ink.black)];
}

function drawArea(ring: readonly PaperPoint[], window: MapWindow): Item[] {
  const closed = [...ring, ring[0]!];
  const hatching = hatchPolygon(ring, 2.5, window.frame).flatMap((path) => window.clipPaper(path));
  return [
    ...(hatching.length > 0 ? [lines(hatching, stroke(pen.hairline, { ink: ink.faint }))] : []),
    ...window.clipPaper(closed).map((piece) => line(piece, stroke(pen.thin, { ink: ink.soft, dashMm: [0.4, 0.8] }))),
  ];
}
