import { setCrossing } from '../../model/edits/setCrossing.ts';
import { called } from '../../model/edits/support/find.ts';
import type { Check } from '../support/context.ts';
import { commonPractice, finding } from '../support/make.ts';

/** Common practice, no source: 300 mm at a stock gateway, 450 mm where vehicles pass. */
const leastDepthM = { stock: 0.3, vehicles: 0.45 };

/** A trench too shallow for what passes over it. */
export const trenchDepth: Check = ({ survey, say }) =>
  [...survey.crossings.values()].flatMap(({ crossing, gateway }) => {
    const leastM = gateway.vehicles ? leastDepthM.vehicles : leastDepthM.stock;
    if (crossing.method !== 'buried' || crossing.depthM >= leastM - 1e-9) return [];
    const what = gateway.vehicles ? 'vehicles pass there' : 'stock pass there';
    const planned = crossing.status === 'planned';
    return finding('trenchDepth', 'warning', [crossing.id, gateway.id], {
      message: `The trench under ${called(gateway)} is ${say(crossing.depthM)} deep; ${what}, and ${say(leastM)} is the least.`,
      remedy: planned
        ? 'Plan it deeper.'
        : 'Dig it deeper or protect it from above, and keep heavy wheels off until then.',
      source: commonPractice,
      at: survey.gateways.get(gateway.id)?.startPostAt ?? null,
      fixes: planned
        ? [
            {
              label: `Plan it ${say(leastM)} deep`,
              edit: (project, newId) => setCrossing({ gatewayId: gateway.id, to: { depthM: leastM } }, newId)(project),
            },
          ]
        : [],
    });
  });
