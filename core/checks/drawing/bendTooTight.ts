import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { assumption, finding } from '../support/make.ts';

/** A trench that curves tighter than its pipe may be bent. */
export const bendTooTight: Check = ({ survey }) =>
  [...survey.crossings.values()].flatMap(({ crossing, gateway, bendRadiusM, tighterThanPipeAllows, bowM }) => {
    if (!tighterThanPipeAllows) return [];
    return finding('bendTooTight', 'warning', [crossing.id, gateway.id], {
      message: message('checks.bendTooTight.message', {
        gateway: refTo(gateway),
        radiusM: bendRadiusM,
        leastM: crossing.minBendRadiusM,
      }),
      remedy: message('checks.bendTooTight.remedy', { bowM }),
      source: assumption,
      at: survey.gateways.get(gateway.id)?.startPostAt ?? null,
    });
  });
