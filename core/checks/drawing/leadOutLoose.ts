import type { Check } from '../support/context.ts';
import { finding, headed } from '../support/make.ts';

/** A lead-out without its energiser, one that ends at no live fence, or one that begins away from its energiser. */
export const leadOutLoose: Check = ({ project, survey, say }) =>
  survey.network.problems.flatMap(({ code, thingIds, at, lengthM }) => {
    const leadOut = project.leadOut.get(thingIds[0]!);
    if (!leadOut) return [];
    if (code === 'leadOutWithoutEnergiser') {
      return finding('leadOutLoose', 'error', [leadOut.id], {
        message: `${headed(leadOut)} belongs to an energiser that is not there.`,
        remedy: 'Delete it, and draw it again from the energiser.',
        at: at ?? leadOut.path[0] ?? null,
      });
    }
    if (code === 'leadOutTouchesNothing') {
      return finding('leadOutLoose', 'error', [leadOut.id], {
        message: `${headed(leadOut)} ends at no live fence line.`,
        remedy: 'Move its end onto a live fence line.',
        at: at ?? leadOut.path.at(-1) ?? null,
      });
    }
    if (code !== 'leadOutStartsElsewhere') return [];
    return finding('leadOutLoose', 'warning', [leadOut.id], {
      message: `${headed(leadOut)} begins ${say(lengthM ?? 0)} away from its energiser; it is taken as connected.`,
      remedy: 'Move its first point to the energiser, so that the cable comes out at its real length.',
      at: at ?? leadOut.path[0] ?? null,
      part: 'start',
    });
  });
