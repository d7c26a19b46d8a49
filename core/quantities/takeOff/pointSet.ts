import type { Xy } from '../../geometry/types.ts';
import { xyDistanceM } from '../../geometry/vector.ts';

/** Numbers points; one within the tolerance of an earlier one gets that one's number. */
export class PointSet {
  readonly #cellM: number;
  readonly #points: Xy[] = [];
  readonly #cells = new Map<string, number[]>();

  constructor(toleranceM: number) {
    this.#cellM = Math.max(toleranceM, 1e-6);
  }

  add(xy: Xy): number {
    const [column, row] = xy.map((value) => Math.floor(value / this.#cellM)) as [number, number];
    let nearest = -1;
    let nearestM = this.#cellM;
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        for (const point of this.#cells.get(`${column + dx} ${row + dy}`) ?? []) {
          const gapM = xyDistanceM(xy, this.#points[point]!);
          if (gapM <= nearestM) [nearest, nearestM] = [point, gapM];
        }
      }
    }
    if (nearest !== -1) return nearest;
    const cell = `${column} ${row}`;
    const point = this.#points.push(xy) - 1;
    this.#cells.set(cell, [...(this.#cells.get(cell) ?? []), point]);
    return point;
  }
}
