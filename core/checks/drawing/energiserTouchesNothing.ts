import type { Check } from '../support/context.ts';
import { finding, headed } from '../support/make.ts';

/** An energiser from which no live fence is reached. */
export const energiserTouchesNothing: Check = ({ project, survey }) => {
  const anyLive = [...project.fenceLine.values()].some(({ live }) => live);
  return survey.network.sources.flatMap(({ energiserId, node }) => {
    const energiser = project.energiser.get(energiserId);
    if (node !== null || !energiser || !anyLive) return [];
    return finding('energiserTouchesNothing', 'error', [energiserId], {
      message: `${headed(energiser)} feeds no fence.`,
      remedy: 'Draw its lead-out to a live fence line.',
      at: energiser.at,
    });
  });
};
