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

  constructor(stride: number, values: Float64Array = new Float64Array(16 * stride)) {
    this.stride = stride;
    this.values = values;
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
  return count > FEW ? sift(byCost, sketch(values, count, stride, amountsAt)) : siftFew(byCost);

  function siftFew(points: readonly number[]): number[] {
    const kept: number[] = [];
    for (const point of points) if (!kept.some((other) => beats(other, point))) kept.push(point);
    return kept;
  }

  /** The same, with most comparisons settled by sketches: of boxes of kept points first, then of each point in a box. */
  function sift(points: readonly number[], sketches: Int32Array): number[] {
    const kept: number[] = [];
    const boxOf = new Map<number, Box>();
    const boxes: Box[] = [];
    for (const point of points) {
      const own = sketches[point]!;
      if (boxes.some((box) => boxBeats(box, point, own | GUARDS))) continue;
      kept.push(point);
      const corner = own & COARSE;
      let box = boxOf.get(corner);
      if (!box) {
        box = { corner, points: [], sketches: [] };
        boxOf.set(corner, box);
        boxes.push(box);
      }
      box.points.push(point);
      box.sketches.push(own);
    }
    return kept;
  }

  function boxBeats(box: Box, point: number, guarded: number): boolean {
    if (((guarded - box.corner) & GUARDS) !== GUARDS) return false;
    const { sketches, points } = box;
    for (let k = 0; k < sketches.length; k++) {
      if (((guarded - sketches[k]!) & GUARDS) === GUARDS && beats(points[k]!, point)) return true;
    }
    return false;
  }

  function beats(other: number, point: number): boolean {
    let i = other * stride + amountsAt;
    let j = point * stride + amountsAt;
    for (let d = amountsAt; d < stride; d++, i++, j++) if (values[i]! > values[j]!) return false;
    return true;
  }
}

/** Kept points whose sketches agree in their coarse bits. */
interface Box {
  readonly corner: number;
  readonly points: number[];
  readonly sketches: number[];
}

/** Below this many points a sketch is not worth making. */
const FEW = 48;
/** The top bit of each of six fields of five bits. */
const GUARDS = 0b10000_10000_10000_10000_10000_10000;
/** The two bits below each guard. */
const COARSE = 0b01100_01100_01100_01100_01100_01100;

/**
 * The first six amounts of each point, rounded down to sixteenths of their spread, five bits each in one number: with
 * the guard bits set in one sketch and another subtracted, a guard survives where the other's amount is not the larger,
 * so one operation rules out most pairs.
 */
function sketch(values: ArrayLike<number>, count: number, stride: number, amountsAt: number): Int32Array {
  const fields = Math.min(6, stride - amountsAt);
  const sketches = new Int32Array(count);
  for (let f = 0; f < fields; f++) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let i = amountsAt + f; i < count * stride; i += stride) {
      if (values[i]! < low) low = values[i]!;
      if (values[i]! > high) high = values[i]!;
    }
    if (high === low) continue;
    const scale = 15.999 / (high - low);
    for (let p = 0; p < count; p++) {
      sketches[p]! |= Math.floor((values[p * stride + amountsAt + f]! - low) * scale) << (5 * f);
    }
  }
  return sketches;
}
