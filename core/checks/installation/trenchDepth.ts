import { recordOf } from '../../locate/crossingSource.ts';
import type { MeasuredDepth } from '../../locate/depth.ts';
import { isInTheGround } from '../../locate/inTheGround.ts';
import { setCrossing } from '../../model/edits/setCrossing.ts';
import { refTo } from '../../model/refTo.ts';
import type { Crossing, Gateway } from '../../model/things.ts';
import { message } from '../../words/message.ts';
import type { Check, CheckContext } from '../support/context.ts';
import { commonPractice, finding } from '../support/make.ts';

/** Depth of the trench. Common practice, no source: 300 mm at a stock gateway, 450 mm where vehicles pass. */
const leastDepthM = { stock: 0.3, vehicles: 0.45 };
/** Depths are measured to the top of the pipe: it lies on the bottom of the trench, its walls so thick (an assumption). */
const pipeWallM = 0.003;

/** A trench too shallow for what passes over it: as measured where anybody measured it, else as planned. */
export const trenchDepth: Check = (context) =>
  [...context.survey.crossings.values()].flatMap(({ crossing, gateway }) => {
    if (crossing.method !== 'buried') return [];
    const leastM = gateway.vehicles ? leastDepthM.vehicles : leastDepthM.stock;
    // Where along the trench it was measured does not matter here: the shallowest counts.
    const depths = recordOf(context.project, crossing.id)?.depths ?? [];
    const [shallowest] = depths.toSorted((a, b) => a.depthM - b.depthM);
    return shallowest
      ? measuredTooShallow(shallowest, crossing, gateway, leastM, context)
      : plannedTooShallow(crossing, gateway, leastM, context);
  });

function measuredTooShallow(
  { depthM, alongM }: MeasuredDepth,
  crossing: Crossing,
  gateway: Gateway,
  leastM: number,
  { survey }: CheckContext,
) {
  const pipeM = crossing.pipeBoreMm / 1000 + 2 * pipeWallM;
  if (depthM + pipeM >= leastM - 1e-9) return [];
  return finding('trenchDepth', 'warning', [crossing.id, gateway.id], {
    message: message('checks.trenchDepth.measured', {
      gateway: refTo(gateway),
      depthM,
      alongM,
      vehicles: gateway.vehicles,
      leastM,
    }),
    remedy: message('checks.trenchDepth.measuredRemedy'),
    source: commonPractice,
    at: survey.gateways.get(gateway.id)?.startPostAt ?? null,
    fixes: [],
  });
}

function plannedTooShallow(crossing: Crossing, gateway: Gateway, leastM: number, { project, survey }: CheckContext) {
  if (crossing.depthM >= leastM - 1e-9) return [];
  const planned = !isInTheGround(project, crossing);
  return finding('trenchDepth', 'warning', [crossing.id, gateway.id], {
    message: message(planned ? 'checks.trenchDepth.planned' : 'checks.trenchDepth.wasPlanned', {
      gateway: refTo(gateway),
      depthM: crossing.depthM,
      vehicles: gateway.vehicles,
      leastM,
    }),
    remedy: message(planned ? 'checks.trenchDepth.plannedRemedy' : 'checks.trenchDepth.wasPlannedRemedy'),
    source: commonPractice,
    at: survey.gateways.get(gateway.id)?.startPostAt ?? null,
    fixes: planned
      ? [
          {
            label: message('checks.trenchDepth.fix', { depthM: leastM }),
            edit: (before, newId) => setCrossing({ gatewayId: gateway.id, to: { depthM: leastM } }, newId)(before),
          },
        ]
      : [],
  });
}
