import { moveSwitch } from '../../model/edits/moveSwitch.ts';
import { otherEnd } from '../../model/edits/support/carryAlong.ts';
import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { commonPractice, finding } from '../support/make.ts';

/** A switch on the far side of its crossing: the buried cable stays live when it is opened. */
export const switchWrongSide: Check = ({ survey }) =>
  survey.switches.flatMap(({ switch: cutOut, wrongSide, at }) => {
    if (!wrongSide) return [];
    const { place } = cutOut;
    return finding('switchWrongSide', 'warning', [cutOut.id], {
      message: message('checks.switchWrongSide.message', { thing: refTo(cutOut) }),
      remedy: message('checks.switchWrongSide.remedy'),
      source: commonPractice,
      at,
      fixes:
        place.on === 'gateway'
          ? [
              {
                label: message('checks.switchWrongSide.fix'),
                edit: moveSwitch({ switchId: cutOut.id, place: { ...place, post: otherEnd(place.post) } }),
              },
            ]
          : [],
    });
  });
