import type { Check } from '../support/context.ts';
import { finding, listed, standard } from '../support/make.ts';

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
      message: parted
        ? `Only open switches keep ${listed(names)} from feeding the same fence: closing one would put two energisers on it.`
        : `${listed(names)} feed the same fence. One fence is never fed by two energisers.`,
      remedy: 'Take one of them away, or part the fences by a gap of at least 2.5 m that nothing live bridges.',
      source: standard,
      at: project.energiser.get(ids[1]!)?.at ?? null,
    });
  });
};
