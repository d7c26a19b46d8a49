import { deleteThings } from '../../model/edits/deleteThings.ts';
import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

const reasons = ['switchNowhere', 'switchOnDeadLine', 'switchInOpening'] as const;

/** A switch that is in no wire. */
export const switchDangling: Check = ({ project, survey }) =>
  survey.network.problems.flatMap(({ code, thingIds, at }) => {
    const reason = reasons.find((known) => known === code);
    const cutOut = reason && project.switch.get(thingIds[0]!);
    if (!cutOut) return [];
    return finding('switchDangling', 'error', [cutOut.id], {
      message: message(`checks.switchDangling.${reason}`, { thing: refTo(cutOut) }),
      remedy: message(`checks.switchDangling.${reason}Remedy`),
      at,
      fixes: [
        {
          label: message('checks.switchDangling.fix'),
          edit: deleteThings([{ kind: 'switch', id: cutOut.id }]),
          deletes: true,
        },
      ],
    });
  });
