import type { Item } from '../../drawing/displayList.ts';
import { type SvgElement, svgElements } from '../../sheets/find/sketchSvg.ts';
import { escapeHtml } from './escapeHtml.ts';

/** A display list as the text of an SVG element that can stand in a page. `name` says what it shows. */
export function svgText(items: readonly Item[], widthMm: number, heightMm: number, name: string): string {
  const body = svgElements(items).map(elementText).join('');
  return `<svg viewBox="0 0 ${widthMm} ${heightMm}" role="img" aria-label="${escapeHtml(name)}">${body}</svg>`;
}

function elementText({ tag, attributes, children, text }: SvgElement): string {
  const named = Object.entries(attributes).map(([key, value]) => ` ${key}="${escapeHtml(String(value))}"`);
  const inner = text === null ? children.map(elementText).join('') : escapeHtml(text);
  return `<${tag}${named.join('')}>${inner}</${tag}>`;
}
