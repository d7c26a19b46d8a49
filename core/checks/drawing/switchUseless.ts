import { called } from '../../model/edits/support/find.ts';
import type { Check } from '../support/context.ts';
import { finding, headed } from '../support/make.ts';

/** A switch that cuts nothing off: joined around within the snap tolerance, or one behind another. */
export const switchUseless: Check = ({ project, survey }) =>
  survey.network.problems.flatMap(({ code, thingIds, at }) => {
    if (code !== 'switchBypassed' && code !== 'switchDoubled') return [];
    const [first, second] = thingIds.map((id) => project.switch.get(id));
    if (!first) return [];
    if (code === 'switchBypassed') {
      return finding('switchUseless', 'warning', [first.id], {
        message: `${headed(first)} does nothing when it is opened: the wires on its two sides are joined around it.`,
        remedy: 'Move it a little away from where the lines join.',
        at,
      });
    }
    return finding('switchUseless', 'warning', thingIds, {
      message: `${headed(first)} and ${second ? called(second) : 'another switch'} stand at the same place, one behind the other.`,
      remedy: 'Delete one of them.',
      at,
    });
  });
