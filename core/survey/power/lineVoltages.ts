import { lengthBelow } from '../../electrical/lengthBelow.ts';
import { lowestInSpan } from '../../electrical/lowestInSpan.ts';
import { propertyOf } from '../../model/project.ts';
import type { Run } from '../../network/types.ts';
import { type Estimate, notKnown, type Power } from './types.ts';

/** What one live fence line reads. */
export interface LineVoltages {
  readonly lineId: string;
  readonly name: string;
  /** Peaks at the line's first and last vertex, and the least anywhere on it: volts, 0 dead, NaN not known. */
  readonly startV: number;
  readonly endV: number;
  readonly lowestV: number;
  /** Fence that reads less than holds the stock, dead fence included; NaN where it is not known. */
  readonly belowM: number;
  readonly fed: 'all' | 'part' | 'none' | 'notKnown';
}

/** Every live fence line, in the order drawn. */
export function lineVoltages(
  { project, survey, supplies, supplyOfNode, spanOfEdge }: Power,
  estimate: Estimate,
): LineVoltages[] {
  const { network } = survey;
  const leastV = propertyOf(project).power.stockMinimumV;
  const { nodeV, nodeFed } = estimate;
  const rows: LineVoltages[] = [];
  for (const [lineId, indices] of network.runsOfLine) {
    const runs = indices.map((index) => network.edges[index] as Run);
    const [first, last] = [runs[0], runs.at(-1)];
    if (!first || !last) continue;
    let lowestV = Infinity;
    let belowM = 0;
    let fedRuns = 0;
    for (const [i, { from, to, lengthM }] of runs.entries()) {
      const span = supplies[supplyOfNode[from]!]?.circuit.spans[spanOfEdge[indices[i]!]!];
      if (!span || nodeFed[from] !== 1) {
        lowestV = Math.min(lowestV, nodeV[from]!);
        belowM += lengthM;
        continue;
      }
      fedRuns++;
      const [fromV, toV] = [nodeV[from]!, nodeV[to]!];
      lowestV = Math.min(lowestV, fromV, toV, lowestInSpan(span, fromV, toV)?.volts ?? Infinity);
      belowM += lengthBelow(span, fromV, toV, leastV);
    }
    const unknown = runs.every(({ from }) => supplyOfNode[from] === notKnown);
    rows.push({
      lineId,
      name: project.fenceLine.get(lineId)?.name ?? lineId,
      startV: nodeV[first.from]!,
      endV: nodeV[last.to]!,
      lowestV,
      belowM: unknown ? Number.NaN : belowM,
      fed: unknown ? 'notKnown' : fedRuns === runs.length ? 'all' : fedRuns > 0 ? 'part' : 'none',
    });
  }
  return rows;
}
