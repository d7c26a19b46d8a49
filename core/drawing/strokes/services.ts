import { offsetPolyline } from '../../geometry/polyline.ts';
import type { Service, ServiceKind } from '../../model/things.ts';
import type { Figures } from '../../words/types.ts';
import type { Item, PaperBox, PaperPoint } from '../displayList.ts';
import { circle, circles, line, lines } from '../paint.ts';
import { type Pen, paperPen, penStroke } from '../pen.ts';
import { earthSign } from '../signs/earthSign.ts';
import { pen as pens } from '../style.ts';
import { hatchPolygon } from './hatch.ts';

/** The word set into a service's line; a power line carries its voltage. Null: its line says enough. */
export function serviceLetters({ what, voltageV }: Pick<Service, 'what' | 'voltageV'>, f: Figures): string | null {
  const { letters } = f.words.sheets.map;
  if (what === 'powerLine') return voltageV === null ? letters.powerLine : f.volts(voltageV);
  return Object.hasOwn(letters, what) ? letters[what as keyof typeof letters] : null;
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
