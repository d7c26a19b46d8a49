import { setCrossing } from '../../model/edits/setCrossing.ts';
import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

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
        message: message('checks.missingCrossing.message', { thing: refTo(gateway) }),
        remedy: message('checks.missingCrossing.remedy'),
        at: survey.gateways.get(gatewayId)?.startPostAt ?? null,
        fixes: [
          {
            label: message('checks.missingCrossing.fix'),
            edit: (now, newId) => setCrossing({ gatewayId, to: {} }, newId)(now),
          },
        ],
      }),
    );
  }
  return findings;
};
