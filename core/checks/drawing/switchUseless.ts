import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** A switch that cuts nothing off: joined around within the snap tolerance, or one behind another. */
export const switchUseless: Check = ({ project, survey }) =>
  survey.network.problems.flatMap(({ code, thingIds, at }) => {
    if (code !== 'switchBypassed' && code !== 'switchDoubled') return [];
    const [first, second] = thingIds.map((id) => project.switch.get(id));
    if (!first) return [];
    if (code === 'switchBypassed') {
      return finding('switchUseless', 'warning', [first.id], {
        message: message('checks.switchUseless.bypassed', { thing: refTo(first) }),
        remedy: message('checks.switchUseless.bypassedRemedy'),
        at,
      });
    }
    return finding('switchUseless', 'warning', thingIds, {
      message: message('checks.switchUseless.doubled', {
        thing: refTo(first),
        other: second ? refTo(second) : null,
      }),
      remedy: message('checks.switchUseless.doubledRemedy'),
      at,
    });
  });
