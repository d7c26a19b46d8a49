import type { Ink, Item, PaperPoint, PathItem, TextItem } from '../../drawing/displayList.ts';
import { ink, mmPerPt } from '../../drawing/style.ts';

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
  const lines: Record<string, string | number> = stroke
    ? {
        stroke: colour(stroke.ink),
        'stroke-width': rounded(stroke.widthMm),
        'stroke-linejoin': 'round',
        ...(stroke.cap ? { 'stroke-linecap': stroke.cap } : {}),
        ...(stroke.dashMm ? { 'stroke-dasharray': stroke.dashMm.map(rounded).join(' ') } : {}),
      }
    : {};
  return [element('path', { d, fill: fill ? colour(fill) : 'none', 'fill-rule': 'evenodd', ...lines })];
}

function textElement({
  text,
  at: [x, y],
  font,
  sizePt,
  align,
  rotationDeg,
  ink: letters,
  haloMm,
}: TextItem): SvgElement {
  const attributes = {
    x: rounded(x),
    y: rounded(y),
    'font-size': rounded(sizePt * mmPerPt),
    'text-anchor': { left: 'start', centre: 'middle', right: 'end' }[align],
    fill: colour(letters),
    ...(font === 'bold' ? { 'font-weight': 'bold' } : {}),
    ...(font === 'italic' ? { 'font-style': 'italic' } : {}),
    ...(rotationDeg === 0 ? {} : { transform: `rotate(${rounded(rotationDeg)} ${rounded(x)} ${rounded(y)})` }),
    ...(haloMm > 0
      ? { 'paint-order': 'stroke', stroke: colour(ink.white), 'stroke-width': 2 * haloMm, 'stroke-linejoin': 'round' }
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
