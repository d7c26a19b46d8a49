import type { CirclesItem, Item, PaperPoint, PathItem, TextItem } from '../../drawing/displayList.ts';
import type { Ink } from '../../drawing/palette.ts';
import { ink } from '../../drawing/style.ts';
import { tracePoints } from '../../drawing/traces.ts';

/**
 * A display list as SVG, for screens: a tree that a window or a text is made of. Millimetres stay the unit. Inks become
 * the properties `--sketch-ink`, `--sketch-soft`, `--sketch-faint`, `--sketch-band` and `--sketch-paper`, so that it follows a dark window.
 */
export interface SvgElement {
  readonly tag: 'path' | 'text' | 'g' | 'svg';
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly SvgElement[];
  /** Of a text. */
  readonly text: string | null;
}

export function svgElements(items: readonly Item[]): SvgElement[] {
  return items.flatMap((item): SvgElement[] => {
    switch (item.kind) {
      case 'path':
        return pathElement(item);
      case 'traces':
        return pathElement({ kind: 'path', paths: tracePoints(item), closed: false, stroke: item.stroke, fill: null });
      case 'circles':
        return [circlesElement(item)];
      case 'text':
        return [textElement(item)];
      case 'clip':
        return [clipElement(item.box, svgElements(item.items))];
      case 'tagged':
        return svgElements(item.items);
      default:
        // Photos, links and anchors are for paper.
        return [];
    }
  });
}

function pathElement({ paths, closed, stroke, fill }: PathItem): SvgElement[] {
  const d = paths
    .filter((path) => path.length > 1)
    .map((path) => `M${path.map(pair).join('L')}${closed ? 'Z' : ''}`)
    .join('');
  if (d === '') return [];
  return [
    element('path', { d, fill: fill ? colour(fill) : 'none', 'fill-rule': 'evenodd', ...strokeAttributes(stroke) }),
  ];
}

/** Each as two half circles. */
function circlesElement({ centres, radius, stroke, fill }: CirclesItem): SvgElement {
  const r = rounded(radius);
  const half = `a${r} ${r} 0 1 0`;
  const d = centres.map(([x, y]) => `M${pair([x - radius, y])}${half} ${2 * r} 0${half} ${-2 * r} 0Z`).join('');
  return element('path', { d, fill: fill ? colour(fill) : 'none', ...strokeAttributes(stroke) });
}

function strokeAttributes(stroke: PathItem['stroke']): Record<string, string | number> {
  return stroke
    ? {
        stroke: colour(stroke.ink),
        'stroke-width': rounded(stroke.width),
        'stroke-linejoin': 'round',
        ...(stroke.cap ? { 'stroke-linecap': stroke.cap } : {}),
        ...(stroke.dash ? { 'stroke-dasharray': stroke.dash.map(rounded).join(' ') } : {}),
      }
    : {};
}

function textElement({ text, at: [x, y], font, size, align, rotationDeg, ink: letters, halo }: TextItem): SvgElement {
  const attributes = {
    x: rounded(x),
    y: rounded(y),
    'font-size': rounded(size),
    'text-anchor': { left: 'start', centre: 'middle', right: 'end' }[align],
    fill: colour(letters),
    ...(font === 'bold' ? { 'font-weight': 'bold' } : {}),
    ...(font === 'italic' ? { 'font-style': 'italic' } : {}),
    ...(rotationDeg === 0 ? {} : { transform: `rotate(${rounded(rotationDeg)} ${rounded(x)} ${rounded(y)})` }),
    ...(halo > 0
      ? { 'paint-order': 'stroke', stroke: colour(ink.white), 'stroke-width': 2 * halo, 'stroke-linejoin': 'round' }
      : {}),
  };
  return { tag: 'text', attributes, children: [], text };
}

function clipElement(
  [left, top, right, bottom]: readonly [number, number, number, number],
  children: readonly SvgElement[],
): SvgElement {
  const [width, height] = [right - left, bottom - top].map(rounded);
  const attributes = {
    x: rounded(left),
    y: rounded(top),
    width: width!,
    height: height!,
    viewBox: `${rounded(left)} ${rounded(top)} ${width} ${height}`,
    overflow: 'hidden',
  };
  return { tag: 'svg', attributes, children, text: null };
}

function element(tag: SvgElement['tag'], attributes: SvgElement['attributes']): SvgElement {
  return { tag, attributes, children: [], text: null };
}

const colours: Readonly<Record<string, string>> = {
  [ink.black]: 'var(--sketch-ink)',
  [ink.soft]: 'var(--sketch-soft)',
  [ink.faint]: 'var(--sketch-faint)',
  [ink.white]: 'var(--sketch-paper)',
};

function colour(own: Ink): string {
  return colours[own] ?? 'var(--sketch-band)';
}

function pair([x, y]: PaperPoint): string {
  return `${rounded(x)} ${rounded(y)}`;
}

/** To the hundredth of a millimetre. */
function rounded(valueMm: number): number {
  return Math.round(valueMm * 100) / 100;
}
