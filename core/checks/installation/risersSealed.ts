import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { commonPractice, finding } from '../support/make.ts';

/** A built crossing whose risers are open to water and ants, or of which nobody has noted it. */
export const risersSealed: Check = ({ survey }) =>
  [...survey.crossings.values()].flatMap(({ crossing, gateway }) => {
    if (crossing.method !== 'buried' || crossing.status !== 'built' || crossing.sealed === true) return [];
    const at = survey.gateways.get(gateway.id)?.startPostAt ?? null;
    if (crossing.sealed === false) {
      return finding('risersSealed', 'warning', [crossing.id, gateway.id], {
        message: message('checks.risersSealed.open', { gateway: refTo(gateway) }),
        remedy: message('checks.risersSealed.openRemedy'),
        source: commonPractice,
        at,
      });
    }
    return finding('risersSealed', 'notKnown', [crossing.id, gateway.id], {
      message: message('checks.risersSealed.notNoted', { gateway: refTo(gateway) }),
      remedy: message('checks.risersSealed.notNotedRemedy'),
      source: commonPractice,
      at,
    });
  });
