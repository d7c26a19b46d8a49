import type { FactorPlan } from './factorPlan.ts';

/** The figures on one topology: branch conductances by slot, leakage and faults by position (siemens). */
export interface PlanValues {
  readonly slotS: Float64Array;
  readonly shuntS: Float64Array;
}

/**
 * The eliminated network. Column j's node, when its turn came, was joined to the later nodes through `entryS` and to
 * earth through `shuntS`; its voltage is the mean of theirs by `weight` (earth being 0 V with the rest of the weight).
 * At the last position, the source's node, `shuntS` is what the whole fence looks like from there.
 */
export interface Factor {
  readonly entryS: Float64Array;
  readonly weight: Float64Array;
  readonly shuntS: Float64Array;
  /** Earth's part of the weight, `shuntS / totalS`; `NaN` where a perfect joint or a dead short takes all of it. */
  readonly earthWeight: Float64Array;
  /** Conductance in all: the pivot. 0 where a piece neither leaks nor reaches the source; may be `Infinity`. */
  readonly totalS: Float64Array;
  /** The entry through which a perfect joint merges the node into a later one; {@link ELIMINATED} or {@link GROUNDED} otherwise. */
  readonly mergedBy: Int32Array;
  /** Zeros between calls. */
  readonly work: Float64Array;
}

export const ELIMINATED = -1;
export const GROUNDED = -2;

export function emptyFactor(plan: FactorPlan): Factor {
  const entries = plan.rowOf.length;
  return {
    entryS: new Float64Array(entries),
    weight: new Float64Array(entries),
    shuntS: new Float64Array(plan.nodeCount),
    earthWeight: new Float64Array(plan.nodeCount),
    totalS: new Float64Array(plan.nodeCount),
    mergedBy: new Int32Array(plan.nodeCount).fill(ELIMINATED),
    work: new Float64Array(plan.nodeCount),
  };
}

/**
 * Eliminates the given columns (all by default), ascending, writing into `factor`.
 *
 * This is LDL^T of the nodal matrix with the diagonal kept as a sum: eliminating a node replaces its star by the mesh
 * between its neighbours (star-mesh transform), so every operation adds, multiplies or divides positive numbers and
 * nothing ever cancels. Each figure keeps full relative accuracy whatever the spread of the conductances (the idea of
 * W. K. Grassmann, M. I. Taksar, D. P. Heyman, Operations Research 33 (1985), for Markov chains), and the limits
 * "perfect joint" and "dead short" are taken exactly instead of by a large number.
 *
 * Column by column ("left-looking"): a column gathers from those eliminated into it, so any set of columns closed under
 * "rows of its members" can be redone alone.
 */
export function eliminate(plan: FactorPlan, values: PlanValues, factor: Factor, columns?: Int32Array): void {
  const { colStart, rowOf, rowStart, rowEntry, rowColumn, slotStart, slotRow } = plan;
  const { slotS } = values;
  const { entryS, weight, shuntS, earthWeight, totalS, mergedBy, work } = factor;
  const count = columns === undefined ? plan.nodeCount : columns.length;

  for (let c = 0; c < count; c++) {
    const j = columns === undefined ? c : columns[c]!;
    let shunt = values.shuntS[j]!;
    for (let q = slotStart[j]!; q < slotStart[j + 1]!; q++) work[slotRow[q]!]! += slotS[q]!;

    for (let q = rowStart[j]!; q < rowStart[j + 1]!; q++) {
      const t = rowEntry[q]!;
      const k = rowColumn[q]!;
      const end = colStart[k + 1]!;
      const y = entryS[t]!;
      const toEarth = earthWeight[k]!;
      if (toEarth >= 0) {
        shunt += y * toEarth;
        for (let u = t + 1; u < end; u++) work[rowOf[u]!]! += y * weight[u]!;
        continue;
      }
      const merged = mergedBy[k]!;
      if (merged === GROUNDED) shunt += y;
      else if (merged === t) {
        shunt += shuntS[k]!;
        for (let u = t + 1; u < end; u++) work[rowOf[u]!]! += entryS[u]!;
      } else if (merged > t) work[rowOf[merged]!]! += y;
    }

    let total = shunt;
    const begin = colStart[j]!;
    const end = colStart[j + 1]!;
    for (let t = begin; t < end; t++) {
      const row = rowOf[t]!;
      const y = work[row]!;
      work[row] = 0;
      entryS[t] = y;
      total += y;
    }
    shuntS[j] = shunt;
    totalS[j] = total;
    if (total < Infinity) {
      mergedBy[j] = ELIMINATED;
      earthWeight[j] = total > 0 ? shunt / total : 0;
      for (let t = begin; t < end; t++) weight[t] = total > 0 ? entryS[t]! / total : 0;
    } else if (shunt === Infinity) {
      mergedBy[j] = GROUNDED;
      earthWeight[j] = Number.NaN;
      for (let t = begin; t < end; t++) weight[t] = 0;
    } else {
      let joint = begin;
      while (entryS[joint]! < Infinity) joint++;
      mergedBy[j] = joint;
      earthWeight[j] = Number.NaN;
      for (let t = begin; t < end; t++) weight[t] = t === joint ? 1 : 0;
    }
  }
}
