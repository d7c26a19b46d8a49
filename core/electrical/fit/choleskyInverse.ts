import { allAtOnce, type Steps } from '../../model/steps.ts';

/**
 * Inverse of a symmetric positive definite matrix (rows), by Cholesky; `null` where it is not positive definite to
 * working precision. For the unknowns of a fit: a handful, or hundreds.
 */
export function choleskyInverse(a: readonly (readonly number[])[]): number[][] | null {
  return allAtOnce(choleskyInverseSteps(a));
}

export function* choleskyInverseSteps(a: readonly (readonly number[])[]): Steps<number[][] | null> {
  const n = a.length;
  const l = Array.from({ length: n }, () => Array.from({ length: n }, () => 0));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i]![j]!;
      for (let k = 0; k < j; k++) sum -= l[i]![k]! * l[j]![k]!;
      if (i > j) l[i]![j] = sum / l[j]![j]!;
      else if (sum > 0 && sum < Infinity) l[i]![i] = Math.sqrt(sum);
      else return null;
    }
    yield;
  }
  const inverse = Array.from({ length: n }, () => Array.from({ length: n }, () => 0));
  for (let column = 0; column < n; column++) {
    const x = Array.from({ length: n }, () => 0);
    for (let i = column; i < n; i++) {
      let sum = i === column ? 1 : 0;
      for (let k = column; k < i; k++) sum -= l[i]![k]! * x[k]!;
      x[i] = sum / l[i]![i]!;
    }
    for (let i = n - 1; i >= 0; i--) {
      let sum = x[i]!;
      for (let k = i + 1; k < n; k++) sum -= l[k]![i]! * x[k]!;
      x[i] = sum / l[i]![i]!;
    }
    for (let i = 0; i < n; i++) inverse[i]![column] = x[i]!;
    yield;
  }
  return inverse;
}
