import { allAtOnce, type Steps } from '../../model/steps.ts';

export interface Eigen {
  readonly values: readonly number[];
  /** `vectors[k]` belongs to `values[k]`, of length 1. */
  readonly vectors: readonly (readonly number[])[];
}

/** Eigenvalues and vectors of a symmetric matrix by cyclic Jacobi rotations (C. G. J. Jacobi, 1846). */
export function symmetricEigen(matrix: readonly (readonly number[])[]): Eigen {
  return allAtOnce(symmetricEigenSteps(matrix));
}

export function* symmetricEigenSteps(matrix: readonly (readonly number[])[]): Steps<Eigen> {
  const n = matrix.length;
  const a = matrix.map((row) => [...row]);
  const v = Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => (i === j ? 1 : 0)));
  for (let sweep = 0; sweep < 60; sweep++) {
    let rotated = false;
    for (let p = 0; p < n; p++) {
      for (let q = p + 1; q < n; q++) {
        const apq = a[p]![q]!;
        if (Math.abs(apq) <= 1e-15 * Math.sqrt(Math.abs(a[p]![p]! * a[q]![q]!))) continue;
        rotated = true;
        const ratio = (a[q]![q]! - a[p]![p]!) / (2 * apq);
        const t = (ratio < 0 ? -1 : 1) / (Math.abs(ratio) + Math.hypot(1, ratio));
        const c = 1 / Math.hypot(1, t);
        const s = t * c;
        for (let k = 0; k < n; k++) rotate(a[k]!, p, q, c, s);
        for (let k = 0; k < n; k++) {
          const apk = a[p]![k]!;
          const aqk = a[q]![k]!;
          a[p]![k] = c * apk - s * aqk;
          a[q]![k] = s * apk + c * aqk;
        }
        for (const row of v) rotate(row, p, q, c, s);
      }
      yield;
    }
    if (!rotated) break;
  }
  return { values: a.map((row, i) => row[i]!), vectors: a.map((_, k) => v.map((row) => row[k]!)) };
}

function rotate(row: number[], p: number, q: number, c: number, s: number): void {
  const x = row[p]!;
  const y = row[q]!;
  row[p] = c * x - s * y;
  row[q] = s * x + c * y;
}
