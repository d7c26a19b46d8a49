import { Front, type LengthRange, mergeShifted, unbeaten } from './fronts.ts';

/** Fronts added up: every sum of a point of each, within the limits, that is not beaten. */
export function frontSum(
  a: Float64Array,
  b: Float64Array,
  limits: ArrayLike<number>,
  range: LengthRange,
): Float64Array {
  return limits.length === 1 ? sumByLength(a, b, limits[0]!, range) : sumByAll(a, b, limits, range);
}

function sumByLength(a: Float64Array, b: Float64Array, limit: number, range: LengthRange): Float64Array {
  const base = new Front(2);
  base.values = a;
  base.size = a.length / 2;
  let sum = new Front(2);
  let spare = new Front(2);
  for (let p = 0; p < b.length; p += 2) {
    mergeShifted(sum, base, b[p]!, b[p + 1]!, limit, range, spare);
    [sum, spare] = [spare, sum];
  }
  return sum.values.slice(0, 2 * sum.size);
}

function sumByAll(a: Float64Array, b: Float64Array, limits: ArrayLike<number>, range: LengthRange): Float64Array {
  const stride = 1 + limits.length;
  const all: number[] = [];
  for (let i = 0; i < a.length; i += stride) {
    for (let j = 0; j < b.length; j += stride) {
      let d = stride - 1;
      while (d >= 1 && a[i + d]! + b[j + d]! <= limits[d - 1]!) d--;
      const length = a[i + 1]! + b[j + 1]!;
      if (d === 1) range.refused = Math.min(range.refused, length);
      if (d > 0) continue;
      range.kept = Math.max(range.kept, length);
      for (let k = 0; k < stride; k++) all.push(a[i + k]! + b[j + k]!);
    }
  }
  const kept = unbeaten(all, all.length / stride, stride, 1);
  const out = new Float64Array(kept.length * stride);
  kept.forEach((point, to) => {
    for (let k = 0; k < stride; k++) out[to * stride + k] = all[point * stride + k]!;
  });
  return out;
}
