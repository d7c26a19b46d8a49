import { setCrossing } from '../../model/edits/setCrossing.ts';
import type { Check } from '../support/context.ts';
import { finding, headed } from '../support/make.ts';

/**
 * A gateway in a live line without a crossing, where nothing else joins the wires on its two sides. A corner gateway
 * whose sides are joined another way needs none.
 */
export const missingCrossing: Check = ({ project, survey, components }) => {
  const findings = [];
  for (const [gatewayId, [start, end]] of survey.network.postsOfGateway) {
    if (survey.crossings.has(gatewayId)) continue;
    if (components.allClosed[start] === components.allClosed[end]) continue;
    const gateway = project.gateway.get(gatewayId)!;
    findings.push(
      finding('missingCrossing', 'warning', [gatewayId], {
        message: `${headed(gateway)} has no crossing, so what lies beyond it is cut off.`,
        remedy: 'Add a crossing under it (or over it), or join the wires another way.',
        at: survey.gateways.get(gatewayId)?.startPostAt ?? null,
        fixes: [{ label: 'Add a crossing', edit: (now, newId) => setCrossing({ gatewayId, to: {} }, newId)(now) }],
      }),
    );
  }
  return findings;
};
