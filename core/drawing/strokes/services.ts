import { offsetPolyline } from '../../geometry/polyline.ts';
import type { Service, ServiceKind } from '../../model/things.ts';
import { formatVoltage } from '../../words/numbers/write.ts';
import type { Item, PaperBox, PaperPoint } from '../displayList.ts';
import { circle, circles, line, lines } from '../paint.ts';
import { type Pen, paperPen, penStroke } from '../pen.ts';
import { earthSign } from '../signs/earthSign.ts';
import { pen as pens } from '../style.ts';
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
/** Letters in a service's line stand so far apart. */
export const serviceLettersEveryMm = 42;

/** The look of a service's line. */
export function serviceLine(
  { what, buried }: Pick<Service, 'what' | 'buried'>,
  path: readonly PaperPoint[],
  pen: Pen = paperPen,
): Item[] {
  const { unit, inks } = pen;
  const ink = inks.service;
  if (what === 'road') {
    const edges = [offsetPolyline(path, roadHalfMm * unit), offsetPolyline(path, -roadHalfMm * unit)];
    return [
      line(path, penStroke(pen, 2 * roadHalfMm, { ink: inks.paper })),
      lines(edges, penStroke(pen, pens.thin, { ink })),
    ];
  }
  if (what === 'path') return [line(path, penStroke(pen, pens.sign, { ink, dashMm: [1, 0.8] }))];
  if (what === 'creek') return [line(path, penStroke(pen, 0.5, { ink: inks.water }))];
  if (what === 'powerLine' && !buried) return powerLine(path, pen);
  return [line(path, penStroke(pen, pens.sign, buried ? { ink, dashMm: buriedDashMm } : { ink }))];
}

/** Overhead: a line with a dot at every corner and end, where its poles may be. */
function powerLine(path: readonly PaperPoint[], pen: Pen): Item[] {
  return [line(path, penStroke(pen, pens.sign)), circles(path, 0.4 * pen.unit, pen.inks.ink)];
}

/** A service drawn as a point. */
export function servicePoint(what: ServiceKind, at: PaperPoint, pen: Pen = paperPen): Item[] {
  if (what === 'earthElectrode') return [...earthSign(at, 'planned', pen).items];
  const { unit, inks } = pen;
  return [circle(at, 0.7 * unit, inks.paper, penStroke(pen, pens.sign)), circle(at, 0.25 * unit, inks.ink)];
}

/** Ground that floods, as far as `frame` reaches: hatched, in a dotted outline. */
export function floodZone(ring: readonly PaperPoint[], frame: PaperBox, clip: Clip, pen: Pen = paperPen): Item[] {
  const closed = [...ring, ring[0]!];
  const hatching = hatchPolygon(ring, 2.5 * pen.unit, frame).flatMap(clip);
  const outline = clip(closed);
  return [
    ...(hatching.length > 0 ? [lines(hatching, penStroke(pen, pens.hairline, { ink: pen.inks.hatch }))] : []),
    ...(outline.length > 0
      ? [lines(outline, penStroke(pen, pens.thin, { ink: pen.inks.service, dashMm: [0.4, 0.8] }))]
      : []),
  ];
}

type Clip = (path: readonly PaperPoint[]) => PaperPoint[][];
