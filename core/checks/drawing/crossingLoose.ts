import { deleteThings } from '../../model/edits/deleteThings.ts';
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
      message: name ? `Gateway ${name} has two crossings.` : 'A crossing belongs to a gateway that is not there.',
      remedy: name ? 'Delete the one that is not there in the ground.' : 'Delete it.',
      at,
      fixes: [{ label: 'Delete this crossing', edit: deleteThings([{ kind: 'crossing', id }]), deletes: true }],
    });
  });
