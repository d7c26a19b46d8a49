import { leastFenceGapM } from '../../survey/power/problems.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding, standard } from '../support/make.ts';

/** One fence fed by two energisers. */
export const twoEnergisers: Check = ({ project, survey, components }) => {
  const groups = new Map<number, { energiserId: string; node: number }[]>();
  for (const { energiserId, node } of survey.network.sources) {
    if (node === null) continue;
    const number = components.allClosed[node]!;
    const group = groups.get(number);
    if (group) group.push({ energiserId, node });
    else groups.set(number, [{ energiserId, node }]);
  }
  return [...groups.values()].flatMap((group) => {
    if (group.length < 2) return [];
    const ids = group.map(({ energiserId }) => energiserId);
    const names = ids.map((id) => project.energiser.get(id)?.name ?? id);
    const parted = new Set(group.map(({ node }) => components.asTheyStand[node])).size === group.length;
    return finding('twoEnergisers', 'error', ids, {
      message: message(parted ? 'checks.twoEnergisers.parted' : 'checks.twoEnergisers.message', { names }),
      remedy: message('checks.twoEnergisers.remedy', { gapM: leastFenceGapM }),
      source: standard,
      at: project.energiser.get(ids[1]!)?.at ?? null,
    });
  });
};
