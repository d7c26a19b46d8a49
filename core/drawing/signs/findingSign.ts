import type { Item, PaperPoint } from '../displayList.ts';
import { circle, line, polygon } from '../paint.ts';
import { type Pen, penStroke } from '../pen.ts';
import { type Sign, squareAround } from './sign.ts';

export type Severity = 'hint' | 'notKnown' | 'warning' | 'error';

export const findingReachMm = 1.6;
/** Where the badge stands, as steps from its place, to the right and up. */
export const badgeMm = 1.45;

/** Where the badge of a finding stands. */
export const badgePlace = ([x, y]: PaperPoint, { unit }: Pick<Pen, 'unit'>): PaperPoint => [
  x + badgeMm * unit,
  y - badgeMm * unit,
];

/**
 * The place a finding is about: a ring with a badge for what is wrong, a badge alone for what is only not known or a
 * hint. The badge's shape and mark tell which; its colour only repeats it.
 */
export function findingSign(at: PaperPoint, severity: Severity, pen: Pen): Sign {
  const { inks, unit } = pen;
  const ink = severity === 'error' ? inks.danger : severity === 'warning' ? inks.caution : inks.inkSoft;
  const ringed = severity === 'error' || severity === 'warning';
  const ring = circle(at, findingReachMm * unit, null, penStroke(pen, severity === 'error' ? 0.4 : 0.27, { ink }));
  const [x, y] = badgePlace(at, pen);
  const rim = penStroke(pen, 0.2, { ink: inks.paper });
  const triangle: PaperPoint[] = [
    [x, y - 1.2 * unit],
    [x + 1.2 * unit, y + 0.93 * unit],
    [x - 1.2 * unit, y + 0.93 * unit],
  ];
  const badge = severity === 'warning' ? polygon(triangle, ink, rim) : circle([x, y], 1.07 * unit, ink, rim);
  return {
    items: [...(ringed ? [ring] : []), badge, ...mark([x, y], severity, pen)],
    covers: squareAround(at, findingReachMm * unit),
  };
}

/** "!", "?" or "i", as strokes, so that no typeface is needed. */
function mark([x, y]: PaperPoint, severity: Severity, pen: Pen): Item[] {
  const { inks, unit } = pen;
  const at = (dx: number, dy: number): PaperPoint => [x + dx * unit, y + dy * unit];
  const stroke = penStroke(pen, 0.24, { ink: inks.paper, cap: 'round' });
  const dot = (dy: number) => circle(at(0, dy), 0.15 * unit, inks.paper);
  if (severity === 'hint') return [dot(-0.5), line([at(0, -0.12), at(0, 0.52)], stroke)];
  if (severity === 'notKnown') {
    const hook = [at(-0.3, -0.3), at(-0.26, -0.48), at(-0.1, -0.6), at(0.1, -0.6), at(0.27, -0.48), at(0.3, -0.28)];
    return [line([...hook, at(0.2, -0.1), at(0.05, 0.02), at(0, 0.18)], stroke), dot(0.55)];
  }
  return [line([at(0, -0.52), at(0, 0.12)], stroke), dot(0.52)];
}
