import type { Course } from '../locate/courses.ts';
import type { CrossingAsBuilt } from '../locate/crossingAsBuilt.ts';
import type { Item, PaperPoint } from './displayList.ts';
import type { MapWindow } from './mapWindow.ts';
import { circle, lines, stroke } from './paint.ts';
import { type Ink, paletteOf } from './palette.ts';

const shade = paletteOf('paper').band;
/** What is known better than this on paper is seen by its line alone. */
const leastMm = 0.5;

/** Every way that a crossing may lie: its courses, and the places that none of them leads through as paths of one vertex. */
export function waysOf({ courses, spots }: Pick<CrossingAsBuilt, 'courses' | 'spots'>): readonly Course[] {
  return [...courses, ...spots.map(({ xy, withinM }) => ({ path: [xy], withinM }))];
}

/** The ground where something may lie, as a soft band about each way under everything; a path of one vertex is a place. */
export function mayLie(ways: readonly Course[], { clip, toPaper, mmPerM }: MapWindow): Item[] {
  return ways.flatMap(({ path, withinM }): Item[] => {
    const withinMm = withinM * mmPerM;
    if (withinMm < leastMm) return [];
    if (path.length === 1) return [circle(toPaper(path[0]!), withinMm, shade)];
    const paths = clip(path);
    return paths.length === 0 ? [] : [lines(paths, stroke(2 * withinMm, { ink: shade, cap: 'round' }))];
  });
}

/** A way as it lies in a drawing; a path of one vertex is a place. */
export interface DrawnWay {
  readonly path: readonly PaperPoint[];
  readonly within: number;
}

/** The same as `mayLie` for inks that show through: those as wide as each other are one item, so that none shades twice. */
export function seeThroughBands(ways: readonly DrawnWay[], ink: Ink): Item[] {
  const byWidth = Map.groupBy(ways, ({ within }) => Math.round(within));
  return [...byWidth].map(([within, alike]) => {
    // A line of no length has round ends only.
    const paths = alike.map(({ path }) => (path.length === 1 ? [path[0]!, path[0]!] : path));
    return lines(paths, stroke(2 * within, { ink, cap: 'round' }));
  });
}
