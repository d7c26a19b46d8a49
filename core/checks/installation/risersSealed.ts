import { called } from '../../model/edits/support/find.ts';
import type { Check } from '../support/context.ts';
import { commonPractice, finding } from '../support/make.ts';

/** A built crossing whose risers are open to water and ants, or of which nobody has noted it. */
export const risersSealed: Check = ({ survey }) =>
  [...survey.crossings.values()].flatMap(({ crossing, gateway }) => {
    if (crossing.method !== 'buried' || crossing.status !== 'built' || crossing.sealed === true) return [];
    const at = survey.gateways.get(gateway.id)?.startPostAt ?? null;
    if (crossing.sealed === false) {
      return finding('risersSealed', 'warning', [crossing.id, gateway.id], {
        message: `The risers at ${called(gateway)} are not sealed: water and ants get into the pipe.`,
        remedy: 'Turn their ends downwards, plug them with sealant, and note it.',
        source: commonPractice,
        at,
      });
    }
    return finding('risersSealed', 'notKnown', [crossing.id, gateway.id], {
      message: `Whether the risers at ${called(gateway)} are sealed is not noted.`,
      remedy: 'Look, and enter yes or no with the crossing.',
      source: commonPractice,
      at,
    });
  });
