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

/** Kept between calls so that the many small sums need no new room; nothing is left in them that matters. */
const scratch = { base: new Front(2), sum: new Front(2), spare: new Front(2) };

function sumByLength(a: Float64Array, b: Float64Array, limit: number, range: LengthRange): Float64Array {
  const { base } = scratch;
  base.values = a;
  base.size = a.length / 2;
  scratch.sum.size = 0;
  for (let p = 0; p < b.length; p += 2) {
    const { sum, spare } = scratch;
    mergeShifted(sum, base, b[p]!, b[p + 1]!, limit, range, spare);
    scratch.sum = spare;
    scratch.spare = sum;
  }
  return scratch.sum.values.slice(0, 2 * scratch.sum.size);
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
