import { offsetPolyline } from '../../geometry/polyline.ts';
import type { Status } from '../../model/things.ts';
import type { Item, PaperPoint, Stroke } from '../displayList.ts';
import { circles, line, lines } from '../paint.ts';
import { type Pen, paperPen, penStroke } from '../pen.ts';
import { paperLeft } from '../signs/sign.ts';
import { marksAlong } from './marksAlong.ts';

/**
 * The strokes of a fence, the lowest first, where a built one is `width` wide. Built: a full line. Planned: hollow, two
 * rails with bare ground between; thin where the line is too narrow to be seen hollow.
 */
export function fenceStrokes(status: Status, width: number, { unit, inks }: Pen = paperPen): Stroke[] {
  if (status === 'built') return [{ width, ink: inks.ink }];
  if (width < hollowFromMm * unit) return [{ width: width * 0.6, ink: inks.ink }];
  const outer = width + 0.1 * unit;
  return [
    { width: outer, ink: inks.ink },
    { width: outer - 2 * railMm * unit, ink: inks.paper },
  ];
}

const hollowFromMm = 0.3;
const railMm = 0.12;

/** How a section's lines are marked; told apart in one ink. Dashes are not among them: they mean buried. */
export type SectionMarks = 'plain' | 'ticks' | 'dots' | 'slants' | 'crosses' | 'rings' | 'twin' | 'squares';

/** In the order of the sections. */
const marks: readonly SectionMarks[] = ['plain', 'ticks', 'dots', 'slants', 'crosses', 'rings', 'twin', 'squares'];

const spacingMm = 5;
const twinMm = 0.62;

/** The marks of a section by its index; after eight they begin again, and the letters tell them apart. */
export function sectionMarks(index: number): SectionMarks {
  return marks[index % marks.length]!;
}

/** A path as a fence of a section: the line itself, and its marks. `width` as in `fenceStrokes`. */
export function drawFence(
  path: readonly PaperPoint[],
  status: Status,
  width: number,
  section: SectionMarks,
  pen: Pen = paperPen,
): Item[] {
  if (path.length < 2) return [];
  return [
    ...fenceStrokes(status, width, pen).map((stroke) => line(path, stroke)),
    ...drawMarks([path], width, section, pen),
  ];
}

/** The marks of a section along some lines that are `width` wide. */
export function drawMarks(
  paths: readonly (readonly PaperPoint[])[],
  width: number,
  section: SectionMarks,
  pen: Pen = paperPen,
): Item[] {
  if (section === 'plain') return [];
  const { unit, inks, least } = pen;
  if (section === 'twin') {
    const away = twinMm * unit + width / 2;
    const rails = paths.flatMap((path) => [offsetPolyline(path, away), offsetPolyline(path, -away)]);
    return [lines(rails, penStroke(pen, 0.13))];
  }
  const places = paths.flatMap((path) => marksAlong(path, spacingMm * unit));
  if (places.length === 0) return [];
  const stroke: Stroke = { width: Math.max(least, 0.14 * unit, width * 0.5), ink: inks.ink };
  const centres = places.map(({ at }) => at);
  if (section === 'dots') return [circles(centres, 0.5 * unit + width / 4, inks.ink)];
  if (section === 'rings') return [circles(centres, 0.6 * unit + width / 4, inks.paper, stroke)];
  if (section === 'squares') {
    const squares = places.map(({ at, along }) => square(at, along, 0.5 * unit + width / 4));
    return [{ kind: 'path', paths: squares, closed: true, stroke: null, fill: inks.ink }];
  }
  return [
    lines(
      places.flatMap(({ at, along }) => bars(at, along, section, unit)),
      stroke,
    ),
  ];
}

const reachMm = 0.95;

function bars(at: PaperPoint, along: PaperPoint, section: SectionMarks, unit: number): PaperPoint[][] {
  const left = paperLeft(along);
  const bar = (alongMm: number, leftMm: number): PaperPoint[] => {
    const dx = (along[0] * alongMm + left[0] * leftMm) * unit;
    const dy = (along[1] * alongMm + left[1] * leftMm) * unit;
    return [
      [at[0] - dx, at[1] - dy],
      [at[0] + dx, at[1] + dy],
    ];
  };
  const slant = reachMm * 0.75;
  if (section === 'ticks') return [bar(0, reachMm)];
  return section === 'slants' ? [bar(slant, slant)] : [bar(slant, slant), bar(slant, -slant)];
}

function square([x, y]: PaperPoint, along: PaperPoint, half: number): PaperPoint[] {
  const left = paperLeft(along);
  const corner = (a: number, b: number): PaperPoint => [
    x + half * (a * along[0] + b * left[0]),
    y + half * (a * along[1] + b * left[1]),
  ];
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}

/** What a fence is dead for: it never carries current, or no current reaches it as the switches stand. */
export type WhyDead = 'plain' | 'unfed';

/** A fence without current: a thin line with small crosses. One that ought to be live is as strong as it would be, in the ink of danger. */
export function deadFenceStroke(why: WhyDead, status: Status, width: number, pen: Pen = paperPen): Stroke {
  if (why === 'unfed') return { width: Math.max(pen.least, width * 0.6), ink: pen.inks.danger };
  return penStroke(pen, status === 'built' ? 0.28 : 0.13, { ink: pen.inks.inkSoft });
}

const deadSpacingMm = 7;
const deadCrossMm = 0.55;

/** The crosses along dead fences. */
export function deadCrosses(paths: readonly (readonly PaperPoint[])[], why: WhyDead, pen: Pen = paperPen): Item[] {
  const reach = deadCrossMm * pen.unit;
  const strokes = paths.flatMap((path) =>
    marksAlong(path, deadSpacingMm * pen.unit).flatMap(({ at: [x, y] }): PaperPoint[][] => [
      [
        [x - reach, y - reach],
        [x + reach, y + reach],
      ],
      [
        [x - reach, y + reach],
        [x + reach, y - reach],
      ],
    ]),
  );
  if (strokes.length === 0) return [];
  const look = why === 'unfed' ? ([0.2, pen.inks.danger] as const) : ([0.13, pen.inks.inkSoft] as const);
  return [lines(strokes, penStroke(pen, look[0], { ink: look[1] }))];
}

/** A path as a fence that is not live. */
export function drawDeadFence(path: readonly PaperPoint[], status: Status, pen: Pen = paperPen): Item[] {
  if (path.length < 2) return [];
  return [line(path, deadFenceStroke('plain', status, 0, pen)), ...deadCrosses([path], 'plain', pen)];
}
