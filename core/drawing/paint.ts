/** Short ways to write display-list items. */
import type {
  FontRole,
  Ink,
  Item,
  PaperBox,
  PaperPoint,
  PathItem,
  Stroke,
  TaggedItem,
  TextItem,
} from './displayList.ts';
import { ink } from './style.ts';

/** Largest distance between a curve and the chords that stand for it. */
const curveToleranceMm = 0.01;

export function stroke(widthMm: number, more: Partial<Omit<Stroke, 'widthMm'>> = {}): Stroke {
  return { widthMm, ink: ink.black, ...more };
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

export function circle(centre: PaperPoint, radiusMm: number, fill: Ink | null, pen: Stroke | null = null): PathItem {
  return polygon(arcPoints(centre, radiusMm, 0, 2 * Math.PI).slice(1), fill, pen);
}

/** Points along a circle's arc, both ends included. Angles in radians, clockwise on the page from the x axis. */
export function arcPoints(centre: PaperPoint, radiusMm: number, from: number, to: number): PaperPoint[] {
  const step = 2 * Math.acos(Math.max(0, 1 - curveToleranceMm / Math.max(radiusMm, curveToleranceMm)));
  const steps = Math.max(8, Math.ceil(Math.abs(to - from) / step));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = from + ((to - from) * i) / steps;
    return [centre[0] + radiusMm * Math.cos(angle), centre[1] + radiusMm * Math.sin(angle)] as const;
  });
}

export interface TextStyle {
  readonly font?: FontRole;
  readonly sizePt: number;
  readonly align?: TextItem['align'];
  readonly rotationDeg?: number;
  readonly ink?: Ink;
  readonly haloMm?: number;
}

export function text(words: string, at: PaperPoint, style: TextStyle): TextItem {
  return {
    kind: 'text',
    text: words,
    at,
    font: style.font ?? 'regular',
    sizePt: style.sizePt,
    align: style.align ?? 'left',
    rotationDeg: style.rotationDeg ?? 0,
    ink: style.ink ?? ink.black,
    haloMm: style.haloMm ?? 0,
  };
}

export function tagged(role: TaggedItem['role'], items: readonly Item[]): TaggedItem {
  return { kind: 'tagged', role, items };
}

export function figure(alternative: string, items: readonly Item[]): TaggedItem {
  return { kind: 'tagged', role: 'Figure', alternative, items };
}
