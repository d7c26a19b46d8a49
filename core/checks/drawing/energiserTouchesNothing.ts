import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** An energiser from which no live fence is reached. */
export const energiserTouchesNothing: Check = ({ project, survey }) => {
  const anyLive = [...project.fenceLine.values()].some(({ live }) => live);
  return survey.network.sources.flatMap(({ energiserId, node }) => {
    const energiser = project.energiser.get(energiserId);
    if (node !== null || !energiser || !anyLive) return [];
    return finding('energiserTouchesNothing', 'error', [energiserId], {
      message: message('checks.energiserTouchesNothing.message', { thing: refTo(energiser) }),
      remedy: message('checks.energiserTouchesNothing.remedy'),
      at: energiser.at,
    });
  });
};
