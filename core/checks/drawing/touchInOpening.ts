import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** A line or a lead-out that touches inside a gateway's opening, where there is no wire to join. */
export const touchInOpening: Check = ({ project, survey }) =>
  survey.network.problems.flatMap(({ code, thingIds, at }) => {
    if (code !== 'touchInOpening') return [];
    const [gatewayId, otherId] = thingIds;
    const gateway = project.gateway.get(gatewayId!);
    const other = project.fenceLine.get(otherId!) ?? project.leadOut.get(otherId!) ?? project.energiser.get(otherId!);
    if (!gateway) return [];
    return finding('touchInOpening', 'error', thingIds, {
      message: message('checks.touchInOpening.message', {
        thing: other ? refTo(other) : null,
        gateway: refTo(gateway),
      }),
      remedy: message('checks.touchInOpening.remedy'),
      at,
    });
  });
