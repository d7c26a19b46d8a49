import { message } from '../../words/message.ts';
import { type Basis, standard } from '../basis.ts';

/** n equal rods about one rod length apart, in a line or a hollow square: Rn = F R1 / n. */
const TABLE: readonly (readonly [rods: number, factor: number])[] = [
  [2, 1.16],
  [3, 1.29],
  [4, 1.36],
  [8, 1.68],
  [12, 1.8],
  [16, 1.92],
  [20, 2.0],
  [24, 2.16],
];

export const multipleRodSource = message('power.sources.multipleRods');
export const multipleRodBasis: Basis = standard(multipleRodSource, true);

/** The most rods that the source's table covers. */
export const MOST_TABULATED_RODS = 24;

export interface RodFactor {
  readonly factor: number;
  /**
   * 'table': the source's own figure (or a single rod, 1). 'between': the source does not cover this count; our line
   * between its neighbours, straight over ln n, the way the table itself roughly grows. 'beyond': past the table's last
   * count; the same line carried on, and no more than a guess.
   */
  readonly coverage: 'table' | 'between' | 'beyond';
}

/** The factor for a whole number of rods, 1 or more. */
export function multipleRodFactor(rods: number): RodFactor {
  if (!(Number.isInteger(rods) && rods >= 1)) throw new RangeError(`A whole number of rods is needed; got ${rods}.`);
  if (rods === 1) return { factor: 1, coverage: 'table' };
  const exact = TABLE.find(([count]) => count === rods);
  if (exact !== undefined) return { factor: exact[1], coverage: 'table' };
  const above = TABLE.findIndex(([count]) => count > rods);
  const upper = above < 0 ? TABLE.length - 1 : above;
  const [n0, f0] = TABLE[upper - 1]!;
  const [n1, f1] = TABLE[upper]!;
  const share = Math.log(rods / n0) / Math.log(n1 / n0);
  return { factor: f0 + share * (f1 - f0), coverage: above < 0 ? 'beyond' : 'between' };
}
