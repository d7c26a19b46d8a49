import { offsetPolyline } from '../../geometry/polyline.ts';
import type { Item, PaperPoint } from '../displayList.ts';
import { circle, line, lines, polygon, stroke } from '../paint.ts';
import { paperLeft } from '../signs/sign.ts';
import { ink } from '../style.ts';
import { marksAlong } from './marksAlong.ts';

/** How a section's lines are marked; told apart in one ink. Dashes are not among them: they mean buried. */
export type SectionMarks = 'plain' | 'ticks' | 'dots' | 'slants' | 'crosses' | 'rings' | 'twin' | 'squares';

/** In the order of the sections, as on the screen. */
const marks: readonly SectionMarks[] = ['plain', 'ticks', 'dots', 'slants', 'crosses', 'rings', 'twin', 'squares'];

const spacingMm = 5;
const twinMm = 0.62;

/** The marks of a section by its index; after eight they begin again, and the letters tell them apart. */
export function sectionMarks(index: number): SectionMarks {
  return marks[((index % marks.length) + marks.length) % marks.length]!;
}

/** A path of the page as a fence of a section: the line itself, `widthMm` wide, and its marks. */
export function drawFence(path: readonly PaperPoint[], widthMm: number, section: SectionMarks): Item[] {
  if (path.length < 2) return [];
  return [line(path, stroke(widthMm)), ...drawMarks(path, widthMm, section)];
}

function drawMarks(path: readonly PaperPoint[], widthMm: number, section: SectionMarks): Item[] {
  if (section === 'plain') return [];
  const markPen = stroke(Math.max(0.14, widthMm * 0.5));
  if (section === 'twin') {
    const away = twinMm + widthMm / 2;
    return [lines([offsetPolyline(path, away), offsetPolyline(path, -away)], stroke(0.13))];
  }
  const places = marksAlong(path, spacingMm);
  if (section === 'dots') return places.map(({ at }) => circle(at, 0.5 + widthMm / 4, ink.black));
  if (section === 'rings') return places.map(({ at }) => circle(at, 0.6 + widthMm / 4, ink.white, markPen));
  if (section === 'squares') return places.map(({ at, along }) => square(at, along, 0.5 + widthMm / 4));
  const strokes = places.flatMap(({ at, along }) => crossStrokes(at, along, section));
  return strokes.length > 0 ? [lines(strokes, markPen)] : [];
}

const reachMm = 0.95;

function crossStrokes(at: PaperPoint, along: PaperPoint, section: SectionMarks): PaperPoint[][] {
  const left = paperLeft(along);
  const bar = (alongMm: number, leftMm: number): PaperPoint[] => {
    const [dx, dy] = [along[0] * alongMm + left[0] * leftMm, along[1] * alongMm + left[1] * leftMm];
    return [
      [at[0] - dx, at[1] - dy],
      [at[0] + dx, at[1] + dy],
    ];
  };
  const slant = reachMm * 0.75;
  if (section === 'ticks') return [bar(0, reachMm)];
  return section === 'slants' ? [bar(slant, slant)] : [bar(slant, slant), bar(slant, -slant)];
}

function square([x, y]: PaperPoint, along: PaperPoint, half: number): Item {
  const left = paperLeft(along);
  const corner = (a: number, b: number): PaperPoint => [
    x + half * (a * along[0] + b * left[0]),
    y + half * (a * along[1] + b * left[1]),
  ];
  return polygon([corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)], ink.black);
}

/** A fence without current: a thin line with small crosses. */
export function drawDeadFence(path: readonly PaperPoint[], built: boolean): Item[] {
  if (path.length < 2) return [];
  const pen = stroke(built ? 0.28 : 0.13, { ink: ink.soft });
  const crosses = marksAlong(path, 9).flatMap(({ at: [x, y] }): PaperPoint[][] => [
    [
      [x - 0.55, y - 0.55],
      [x + 0.55, y + 0.55],
    ],
    [
      [x - 0.55, y + 0.55],
      [x + 0.55, y - 0.55],
    ],
  ]);
  return [line(path, pen), ...(crosses.length > 0 ? [lines(crosses, stroke(0.13, { ink: ink.soft }))] : [])];
}
