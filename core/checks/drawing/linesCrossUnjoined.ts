import { fixCrossing } from '../../model/edits/fixCrossing.ts';
import { refTo } from '../../model/refTo.ts';
import { stationOf } from '../../shapes/measuredPath.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';
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
      message: message('checks.linesCrossUnjoined.message', { thing: refTo(a.line), other: refTo(b.line) }),
      remedy: message('checks.linesCrossUnjoined.remedy'),
      at: near,
      fixes: [{ label: message('checks.linesCrossUnjoined.fix'), edit: fixCrossing(wanted) }],
    });
  });
};
