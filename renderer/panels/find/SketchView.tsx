import { createElement, type ReactNode, useRef } from 'react';
import type { Item } from '../../../core/drawing/displayList.ts';
import { type SvgElement, svgElements } from '../../../core/sheets/find/sketchSvg.ts';
import { useWidthPx } from '../power/useWidthPx.ts';

/** CSS pixels in a millimetre. */
const pxPerMm = 96 / 25.4;

/** A sketch as wide as its place, in true proportions; letters keep their size. */
export function SketchView({
  name,
  heightPx,
  draw,
}: {
  readonly name: string;
  readonly heightPx: number;
  /** The sketch for a frame of this size, millimetres. */
  readonly draw: (widthMm: number, heightMm: number) => readonly Item[];
}) {
  const frame = useRef<HTMLElement>(null);
  const widthPx = useWidthPx(frame, 360);
  const [widthMm, heightMm] = [widthPx / pxPerMm, heightPx / pxPerMm];
  return (
    <figure ref={frame} className="find-sketch">
      <svg
        width={widthPx}
        height={heightPx}
        viewBox={`0 0 ${widthMm.toFixed(2)} ${heightMm.toFixed(2)}`}
        role="img"
        aria-label={name}
      >
        {svgElements(draw(widthMm, heightMm)).map(rendered)}
      </svg>
    </figure>
  );
}

function rendered({ tag, attributes, children, text }: SvgElement, index: number): ReactNode {
  const named = Object.fromEntries(Object.entries(attributes).map(([key, value]) => [camel(key), value]));
  return createElement(tag, { key: index, ...named }, text ?? children.map(rendered));
}

/** "stroke-width" as React calls it. */
function camel(name: string): string {
  return name.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
}
