import { type Factor, GROUNDED } from './factor.ts';
import type { FactorPlan } from './factorPlan.ts';

/** Node voltages (by node number, volts) when the source's node stands at `sourceV`: each the weighted mean of later ones. */
export function voltagesFrom(plan: FactorPlan, factor: Factor, sourceV: number): Float64Array {
  const { nodeCount, positionOf } = plan;
  const byPosition = new Float64Array(nodeCount);
  byPosition[nodeCount - 1] = sourceV;
  for (let j = nodeCount - 2; j >= 0; j--) readColumn(plan, factor, j, byPosition);
  const nodeVoltageV = new Float64Array(nodeCount);
  for (let v = 0; v < nodeCount; v++) nodeVoltageV[v] = byPosition[positionOf[v]!]!;
  return nodeVoltageV;
}

/** The voltage of column j's node into `byPosition`, where those of the later ones that it hangs on are. */
export function readColumn(
  { colStart, rowOf }: FactorPlan,
  { weight }: Factor,
  j: number,
  byPosition: Float64Array,
): void {
  let volts = 0;
  let highest = 0;
  for (let t = colStart[j]!; t < colStart[j + 1]!; t++) {
    const there = byPosition[rowOf[t]!]!;
    volts += weight[t]! * there;
    if (there > highest) highest = there;
  }
  // A mean is never above what it is taken of; the last bit of rounding is cut off so that this holds to the letter.
  byPosition[j] = Math.min(volts, highest);
}

/**
 * What one ampere fed in at a node raises every node to (ohm, by node number), the source's open-circuit voltage
 * being off and its `internalOhm` in place: a row of the resistance matrix. It is symmetric, so the same figures say
 * how the voltage at that node answers to a current drawn anywhere, which is what a leakage fit needs.
 * The node itself must not stand alone (no leak, no way to the source): its row would be infinite.
 */
export function responseTo(plan: FactorPlan, factor: Factor, node: number, internalOhm: number): Float64Array {
  const { nodeCount, colStart, rowOf, positionOf } = plan;
  const { weight, totalS, shuntS, mergedBy } = factor;
  const root = nodeCount - 1;
  const ampere = new Float64Array(nodeCount);
  ampere[positionOf[node]!] = 1;
  for (let j = positionOf[node]!; j < root; j++) {
    const fed = ampere[j]!;
    if (fed === 0) continue;
    for (let t = colStart[j]!; t < colStart[j + 1]!; t++) ampere[rowOf[t]!]! += weight[t]! * fed;
  }
  const volts = ampere;
  volts[root] = internalOhm === 0 ? 0 : ampere[root]! / (shuntS[root]! + 1 / internalOhm);
  for (let j = root - 1; j >= 0; j--) {
    const total = totalS[j]!;
    let v = mergedBy[j] === GROUNDED || total === 0 || total === Infinity ? 0 : ampere[j]! / total;
    for (let t = colStart[j]!; t < colStart[j + 1]!; t++) v += weight[t]! * volts[rowOf[t]!]!;
    volts[j] = v;
  }
  const response = new Float64Array(nodeCount);
  for (let v = 0; v < nodeCount; v++) response[v] = volts[positionOf[v]!]!;
  return response;
}
