import { deleteThings } from '../../model/edits/deleteThings.ts';
import type { NetworkProblemCode } from '../../network/types.ts';
import type { Check } from '../support/context.ts';
import { finding, headed } from '../support/make.ts';

const reasons: Partial<Record<NetworkProblemCode, readonly [what: string, remedy: string]>> = {
  switchNowhere: [
    'stands on something that is not there, or beyond the end of its line',
    'Move it to a place on the fence.',
  ],
  switchOnDeadLine: ['stands on a fence line that is not live', 'Make the line live, or move the switch.'],
  switchInOpening: ['stands in the opening of a gateway, where no wire runs', 'Move it to one of the posts.'],
};

/** A switch that is in no wire. */
export const switchDangling: Check = ({ project, survey }) =>
  survey.network.problems.flatMap(({ code, thingIds, at }) => {
    const reason = reasons[code];
    const cutOut = reason && project.switch.get(thingIds[0]!);
    if (!cutOut) return [];
    return finding('switchDangling', 'error', [cutOut.id], {
      message: `${headed(cutOut)} ${reason[0]}.`,
      remedy: reason[1],
      at,
      fixes: [{ label: 'Delete the switch', edit: deleteThings([{ kind: 'switch', id: cutOut.id }]), deletes: true }],
    });
  });
