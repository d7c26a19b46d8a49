import { moveSwitch } from '../../model/edits/moveSwitch.ts';
import { otherEnd } from '../../model/edits/support/carryAlong.ts';
import type { Check } from '../support/context.ts';
import { commonPractice, finding, headed } from '../support/make.ts';

/** A switch on the far side of its crossing: the buried cable stays live when it is opened. */
export const switchWrongSide: Check = ({ survey }) =>
  survey.switches.flatMap(({ switch: cutOut, wrongSide, at }) => {
    if (!wrongSide) return [];
    const { place } = cutOut;
    return finding('switchWrongSide', 'warning', [cutOut.id], {
      message: `${headed(cutOut)} stands on the far side of its crossing: the buried cable stays live when it is opened.`,
      remedy: 'Move it to the supply side of the gateway.',
      source: commonPractice,
      at,
      fixes:
        place.on === 'gateway'
          ? [
              {
                label: 'Move it to the supply side',
                edit: moveSwitch({ switchId: cutOut.id, place: { ...place, post: otherEnd(place.post) } }),
              },
            ]
          : [],
    });
  });
