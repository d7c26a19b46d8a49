import { type Basis, commonPractice } from '../basis.ts';

export interface StockMinimum {
  readonly stock: 'shortHaired' | 'longHaired' | 'pressed';
  /** Least peak voltage that holds them, as a range. */
  readonly fromV: number;
  readonly toV: number;
  readonly basis: Basis;
}

export const stockMinimums: readonly StockMinimum[] = [
  { stock: 'shortHaired', fromV: 2000, toV: 2000, basis: commonPractice },
  { stock: 'longHaired', fromV: 3000, toV: 4000, basis: commonPractice },
  { stock: 'pressed', fromV: 4000, toV: 5000, basis: commonPractice },
];
