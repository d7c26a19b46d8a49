import type { SheetOptions } from '../api/sheetOptions.ts';
import { type Box, growBox } from '../geometry/box.ts';
import { clipPolylineToBox } from '../geometry/polyline.ts';
import type { Xy } from '../geometry/types.ts';
import { sheetFormat } from './paper.ts';

/** Sheets stand no closer than this share of the widest step, or they would show the same ground twice. */
const leastStep = 0.8;

/** What neighbouring sheets share at the least, millimetres of paper. */
export const overlapMm = 12;

/** Paper kept free around the property on the outermost sheets, for signs and labels. */
const rimMm = 7;

/** More sheets than this is a mistaken scale, not a plan. */
export const mostSheets = 60;

export type Side = 'north' | 'east' | 'south' | 'west';

/** One map sheet of a set. */
export interface SheetTile {
  /** From 1, by rows from north to south, each from west to east. */
  readonly number: number;
  readonly centre: Xy;
  /** The ground that its map shows. */
  readonly ground: Box;
  /** Numbers of the sheets that carry on beyond each edge. */
  readonly next: Partial<Record<Side, number>>;
}

type SheetChoice = Pick<SheetOptions, 'paper' | 'orientation' | 'scaleDenominator'>;

/** Ground that one map sheet shows, metres east-west and north-south. */
export function sheetGroundM(choice: SheetChoice): readonly [widthM: number, heightM: number] {
  const [left, top, right, bottom] = sheetFormat(choice).map;
  return [((right - left) * choice.scaleDenominator) / 1000, ((bottom - top) * choice.scaleDenominator) / 1000];
}

/** How many columns and rows of sheets it takes to cover a part of the plane. */
export function sheetsToCover(extent: Box, choice: SheetChoice): readonly [columns: number, rows: number] {
  const [widthM, heightM] = sheetGroundM(choice);
  const mmM = choice.scaleDenominator / 1000;
  const count = (lengthM: number, sheetM: number) => {
    const beyondFirstM = lengthM + 2 * rimMm * mmM - sheetM;
    return beyondFirstM <= 0 ? 1 : 1 + Math.ceil(beyondFirstM / (sheetM - overlapMm * mmM));
  };
  return [count(extent[2] - extent[0], widthM), count(extent[3] - extent[1], heightM)];
}

/** The one sheet around a chosen centre. */
export function sheetAround(centre: Xy, choice: SheetChoice): SheetTile {
  return { number: 1, centre, ground: groundAround(centre, choice), next: {} };
}

/**
 * The sheets that cover `extent` with overlap, set out evenly about its middle; those that none of `paths` reaches are
 * left out, so that no blank sheet is printed.
 */
export function sheetsCovering(extent: Box, paths: readonly (readonly Xy[])[], choice: SheetChoice): SheetTile[] {
  const [columns, rows] = sheetsToCover(extent, choice);
  const [widthM, heightM] = sheetGroundM(choice);
  const stepX = stepM(extent[2] - extent[0], widthM, columns, choice);
  const stepY = stepM(extent[3] - extent[1], heightM, rows, choice);
  const middle: Xy = [(extent[0] + extent[2]) / 2, (extent[1] + extent[3]) / 2];
  const places: { column: number; row: number; centre: Xy; ground: Box }[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const centre: Xy = [middle[0] + (column - (columns - 1) / 2) * stepX, middle[1] - (row - (rows - 1) / 2) * stepY];
      const ground = groundAround(centre, choice);
      if (rows * columns === 1 || paths.some((path) => reaches(path, ground)))
        places.push({ column, row, centre, ground });
    }
  }
  const numberAt = new Map(places.map(({ column, row }, i) => [`${column},${row}`, i + 1]));
  return places.map(({ column, row, centre, ground }, i) => {
    const beside: readonly (readonly [Side, number | undefined])[] = [
      ['north', numberAt.get(`${column},${row - 1}`)],
      ['east', numberAt.get(`${column + 1},${row}`)],
      ['south', numberAt.get(`${column},${row + 1}`)],
      ['west', numberAt.get(`${column - 1},${row}`)],
    ];
    const next: Partial<Record<Side, number>> = {};
    for (const [side, number] of beside) if (number !== undefined) next[side] = number;
    return { number: i + 1, centre, ground, next };
  });
}

/** From sheet to sheet, metres: what is left over widens the overlaps, not the blank rims. */
function stepM(lengthM: number, sheetM: number, count: number, { scaleDenominator }: SheetChoice): number {
  if (count === 1) return 0;
  const mostM = sheetM - (overlapMm * scaleDenominator) / 1000;
  const neededM = (lengthM + (2 * rimMm * scaleDenominator) / 1000 - sheetM) / (count - 1);
  return Math.max(neededM, mostM * leastStep);
}

function groundAround([x, y]: Xy, choice: SheetChoice): Box {
  const [widthM, heightM] = sheetGroundM(choice);
  return [x - widthM / 2, y - heightM / 2, x + widthM / 2, y + heightM / 2];
}

function reaches(path: readonly Xy[], ground: Box): boolean {
  const near = growBox(ground, 1e-6);
  return (
    path.some(([x, y]) => x >= near[0] && x <= near[2] && y >= near[1] && y <= near[3]) ||
    clipPolylineToBox(path, near).length > 0
  );
}
