/** Short ways to write display-list items. */
import type {
  CirclesItem,
  FontRole,
  Item,
  PaperBox,
  PaperPoint,
  PathItem,
  Stroke,
  TaggedItem,
  TextItem,
} from './displayList.ts';
import type { Ink } from './palette.ts';
import { ink, mmPerPt } from './style.ts';

/** Largest distance between a curve and the chords that stand for it, millimetres of a sheet. */
const curveToleranceMm = 0.01;

export function stroke(width: number, more: Partial<Omit<Stroke, 'width'>> = {}): Stroke {
  return { width, ink: ink.black, ...more };
}

export function line(points: readonly PaperPoint[], pen: Stroke): PathItem {
  return { kind: 'path', paths: [points], closed: false, stroke: pen, fill: null };
}

export function lines(paths: readonly (readonly PaperPoint[])[], pen: Stroke): PathItem {
  return { kind: 'path', paths, closed: false, stroke: pen, fill: null };
}

export function polygon(points: readonly PaperPoint[], fill: Ink | null, pen: Stroke | null = null): PathItem {
  return { kind: 'path', paths: [points], closed: true, stroke: pen, fill };
}

export function box([left, top, right, bottom]: PaperBox, fill: Ink | null, pen: Stroke | null = null): PathItem {
  const corners: PaperPoint[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  return polygon(corners, fill, pen);
}

export function circle(centre: PaperPoint, radius: number, fill: Ink | null, pen: Stroke | null = null): CirclesItem {
  return circles([centre], radius, fill, pen);
}

export function circles(
  centres: readonly PaperPoint[],
  radius: number,
  fill: Ink | null,
  pen: Stroke | null = null,
): CirclesItem {
  return { kind: 'circles', centres, radius, stroke: pen, fill };
}

/**
 * Points along a circle's arc, both ends included. Angles in radians, clockwise on the page from the x axis; `unit` as
 * of the pen that it is drawn with.
 */
export function arcPoints(centre: PaperPoint, radius: number, from: number, to: number, unit = 1): PaperPoint[] {
  const tolerance = curveToleranceMm * unit;
  const step = 2 * Math.acos(Math.max(0, 1 - tolerance / Math.max(radius, tolerance)));
  const steps = Math.max(8, Math.ceil(Math.abs(to - from) / step));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = from + ((to - from) * i) / steps;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)] as const;
  });
}

export interface TextStyle {
  readonly font?: FontRole;
  /** In points where the drawing's unit is a millimetre. */
  readonly sizePt: number;
  readonly align?: TextItem['align'];
  readonly rotationDeg?: number;
  readonly ink?: Ink;
  readonly halo?: number;
  readonly haloInk?: Ink;
}

export function text(words: string, at: PaperPoint, style: TextStyle): TextItem {
  return {
    kind: 'text',
    text: words,
    at,
    font: style.font ?? 'regular',
    size: style.sizePt * mmPerPt,
    align: style.align ?? 'left',
    rotationDeg: style.rotationDeg ?? 0,
    ink: style.ink ?? ink.black,
    halo: style.halo ?? 0,
    haloInk: style.haloInk ?? ink.white,
  };
}

export function tagged(role: TaggedItem['role'], items: readonly Item[]): TaggedItem {
  return { kind: 'tagged', role, items };
}

export function figure(alternative: string, items: readonly Item[]): TaggedItem {
  return { kind: 'tagged', role: 'Figure', alternative, items };
}
