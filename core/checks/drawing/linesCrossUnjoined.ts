import { fixCrossing } from '../../model/edits/fixCrossing.ts';
import { called } from '../../model/edits/support/find.ts';
import { stationOf } from '../../shapes/measuredPath.ts';
import type { Check } from '../support/context.ts';
import { finding, headed } from '../support/make.ts';
import { openingAt } from '../support/openings.ts';

/** Two live lines that cross where neither has a corner: they do not join. In an opening there is no wire to join. */
export const linesCrossUnjoined: Check = ({ survey, meetings, openings }) => {
  return meetings.flatMap(({ a, b, segmentA, segmentB, meeting }) => {
    if (meeting.kind !== 'cross') return [];
    const inOpening =
      openingAt(openings, a.line.id, stationOf(a, { segment: segmentA, fraction: meeting.t })) ??
      openingAt(openings, b.line.id, stationOf(b, { segment: segmentB, fraction: meeting.u }));
    if (inOpening) return [];
    const near = survey.plane.toLonLat(meeting.point);
    const wanted = { lineId: a.line.id, otherId: b.line.id, near };
    return finding('linesCrossUnjoined', 'warning', [a.line.id, b.line.id], {
      message: `${headed(a.line)} crosses ${called(b.line)} without being joined to it.`,
      remedy: 'Join them here if the wires are joined; otherwise end one of the two short of the other.',
      at: near,
      fixes: [{ label: 'Join the lines here', edit: fixCrossing(wanted) }],
    });
  });
};
