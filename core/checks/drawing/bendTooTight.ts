import { called } from '../../model/edits/support/find.ts';
import type { Check } from '../support/context.ts';
import { assumption, finding } from '../support/make.ts';

/** A trench that curves tighter than its pipe may be bent. */
export const bendTooTight: Check = ({ survey, say }) =>
  [...survey.crossings.values()].flatMap(({ crossing, gateway, bendRadiusM, tighterThanPipeAllows, bowM }) => {
    if (!tighterThanPipeAllows) return [];
    return finding('bendTooTight', 'warning', [crossing.id, gateway.id], {
      message: `The crossing of ${called(gateway)} bends at a radius of ${say(bendRadiusM)}, tighter than its pipe allows (${say(crossing.minBendRadiusM)}).`,
      remedy: `Make the bow smaller than ${say(bowM)}, or enter the least bend radius of the pipe in hand.`,
      source: assumption,
      at: survey.gateways.get(gateway.id)?.startPostAt ?? null,
    });
  });
