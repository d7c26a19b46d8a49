import { voltageAlongSpan } from '../../../core/electrical/voltageAlongSpan.ts';
import { largestOf } from '../../../core/model/extremes.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { VoltageShading } from '../../map/mapTypes.ts';
import type { PowerView } from './usePower.ts';

/** The ramp ends at a multiple of this, so that its steps are round figures. */
const rampStepV = 2000;

/** What the map needs to shade its runs; null where nothing is estimated. */
export function voltageShading({ power, estimate }: PowerView): VoltageShading | null {
  const { supplies, supplyOfNode, spanOfEdge, survey } = power;
  if (supplies.length === 0) return null;
  const { edges } = survey.network;
  const { nodeV, nodeFed } = estimate;
  const highestV = largestOf(estimate.supplies.map(({ voltages }) => voltages.sourceVoltageV));
  return {
    ofEdge(index) {
      const { from, to } = edges[index]!;
      return nodeFed[from] === 1 && nodeFed[to] === 1 ? [nodeV[from]!, nodeV[to]!] : null;
    },
    along(index, distanceM) {
      const { from, to } = edges[index]!;
      const [fromV, toV] = [nodeV[from]!, nodeV[to]!];
      if (Number.isNaN(fromV)) return null;
      const span = supplies[supplyOfNode[from]!]?.circuit.spans[spanOfEdge[index]!];
      return span && nodeFed[from] === 1 ? voltageAlongSpan(span, fromV, toV, distanceM) : fromV;
    },
    openSwitchIds: estimate.openSwitchIds,
    maxV: Math.max(rampStepV, rampStepV * Math.ceil(highestV / rampStepV)),
    minimumV: propertyOf(power.project).power.stockMinimumV,
  };
}
