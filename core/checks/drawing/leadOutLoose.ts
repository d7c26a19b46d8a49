import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** A lead-out without its energiser, one that ends at no live fence, or one that begins away from its energiser. */
export const leadOutLoose: Check = ({ project, survey }) =>
  survey.network.problems.flatMap(({ code, thingIds, at, lengthM }) => {
    const leadOut = project.leadOut.get(thingIds[0]!);
    if (!leadOut) return [];
    if (code === 'leadOutWithoutEnergiser') {
      return finding('leadOutLoose', 'error', [leadOut.id], {
        message: message('checks.leadOutLoose.noEnergiser', { thing: refTo(leadOut) }),
        remedy: message('checks.leadOutLoose.noEnergiserRemedy'),
        at: at ?? leadOut.path[0] ?? null,
      });
    }
    if (code === 'leadOutTouchesNothing') {
      return finding('leadOutLoose', 'error', [leadOut.id], {
        message: message('checks.leadOutLoose.endsNowhere', { thing: refTo(leadOut) }),
        remedy: message('checks.leadOutLoose.endsNowhereRemedy'),
        at: at ?? leadOut.path.at(-1) ?? null,
      });
    }
    if (code !== 'leadOutStartsElsewhere') return [];
    return finding('leadOutLoose', 'warning', [leadOut.id], {
      message: message('checks.leadOutLoose.startsElsewhere', { thing: refTo(leadOut), awayM: lengthM ?? 0 }),
      remedy: message('checks.leadOutLoose.startsElsewhereRemedy'),
      at: at ?? leadOut.path[0] ?? null,
      part: 'start',
    });
  });
