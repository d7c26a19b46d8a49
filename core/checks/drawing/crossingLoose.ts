import { deleteThings } from '../../model/edits/deleteThings.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** A crossing whose gateway is missing, or a second one for the same gateway. */
export const crossingLoose: Check = ({ project, survey }) =>
  survey.network.problems.flatMap(({ code, thingIds, at }) => {
    if (code !== 'crossingWithoutGateway' && code !== 'crossingDoubled') return [];
    const id = code === 'crossingDoubled' ? thingIds[1]! : thingIds[0]!;
    const crossing = project.crossing.get(id);
    if (!crossing) return [];
    const name = project.gateway.get(crossing.gatewayId)?.name;
    return finding('crossingLoose', 'error', [id], {
      message: name ? message('checks.crossingLoose.doubled', { name }) : message('checks.crossingLoose.noGateway'),
      remedy: message(name ? 'checks.crossingLoose.doubledRemedy' : 'checks.crossingLoose.noGatewayRemedy'),
      at,
      fixes: [
        { label: message('checks.crossingLoose.fix'), edit: deleteThings([{ kind: 'crossing', id }]), deletes: true },
      ],
    });
  });
