/**
 * Fronts: what a part of the network can hand to the rest. A point says "for this much cost, the section still open
 * towards the rest amounts to this much (length, and gateways and runs where they are limited)". Only points that no
 * other point beats in everything are kept, in order of rising cost.
 */
export class Front {
  /** `stride` numbers a point: the cost, then the amounts. */
  values: Float64Array;
  size = 0;
  readonly stride: number;

  constructor(stride: number) {
    this.stride = stride;
    this.values = new Float64Array(16 * stride);
  }

  reserve(points: number): void {
    const needed = points * this.stride;
    if (needed <= this.values.length) return;
    const grown = new Float64Array(Math.max(needed, 2 * this.values.length));
    grown.set(this.values.subarray(0, this.size * this.stride));
    this.values = grown;
  }
}

/** Which length limits would have led to the same decisions: at least `kept`, less than `refused`. */
export interface LengthRange {
  kept: number;
  refused: number;
}

/**
 * Adds to `into` the points of `base` shifted by `cost` and `length`, both fronts of one amount (length), leaving out
 * what is over `limit` or beaten. The two staircases are merged in one pass into `out`.
 */
export function mergeShifted(
  into: Front,
  base: Front,
  cost: number,
  length: number,
  limit: number,
  range: LengthRange,
  out: Front,
): void {
  const b = base.values;
  const bEnd = 2 * base.size;
  let j = 0;
  while (j < bEnd && b[j + 1]! + length > limit) j += 2;
  if (j > 0) {
    const refused = b[j - 1]! + length;
    if (refused < range.refused) range.refused = refused;
  }
  if (j < bEnd) {
    const kept = b[j + 1]! + length;
    if (kept > range.kept) range.kept = kept;
  }
  out.reserve(into.size + base.size);
  const a = into.values;
  const o = out.values;
  const aEnd = 2 * into.size;
  let i = 0;
  let k = 0;
  let shortest = Number.POSITIVE_INFINITY;
  while (i < aEnd || j < bEnd) {
    let pointCost: number;
    let pointLength: number;
    if (j >= bEnd) {
      pointCost = a[i]!;
      pointLength = a[i + 1]!;
      i += 2;
    } else {
      const shiftedCost = b[j]! + cost;
      const shiftedLength = b[j + 1]! + length;
      if (i < aEnd && (a[i]! < shiftedCost || (a[i] === shiftedCost && a[i + 1]! <= shiftedLength))) {
        pointCost = a[i]!;
        pointLength = a[i + 1]!;
        i += 2;
      } else {
        pointCost = shiftedCost;
        pointLength = shiftedLength;
        j += 2;
      }
    }
    if (pointLength < shortest) {
      shortest = pointLength;
      o[k] = pointCost;
      o[k + 1] = pointLength;
      k += 2;
    }
  }
  out.size = k / 2;
}

/**
 * Sorts points (in `values`, `stride` numbers each) by cost and keeps those that no other beats or equals in cost and
 * in every amount. `amountsAt` is where the amounts begin in a point. Returns the indices of the kept points.
 */
export function unbeaten(values: ArrayLike<number>, count: number, stride: number, amountsAt: number): number[] {
  const byCost = Array.from({ length: count }, (_, i) => i);
  byCost.sort((x, y) => {
    let i = x * stride;
    let j = y * stride;
    if (values[i] !== values[j]) return values[i]! - values[j]!;
    i += amountsAt;
    j += amountsAt;
    for (let d = amountsAt; d < stride; d++, i++, j++) if (values[i] !== values[j]) return values[i]! - values[j]!;
    return x - y;
  });
  const kept: number[] = [];
  for (const point of byCost) {
    const at = point * stride;
    let beaten = false;
    for (let k = kept.length - 1; k >= 0 && !beaten; k--) {
      const other = kept[k]! * stride;
      let d = amountsAt;
      while (d < stride && values[other + d]! <= values[at + d]!) d++;
      beaten = d === stride;
    }
    if (!beaten) kept.push(point);
  }
  return kept;
}
