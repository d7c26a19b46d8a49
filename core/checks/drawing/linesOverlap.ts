import { xyDistanceM } from '../../geometry/vector.ts';
import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** Lines that part at a sharp angle lie within the snap tolerance of each other for a few metres. */
const leastOverlapM = 10;

/** Two lines drawn on top of each other: their fence would be counted twice. */
export const linesOverlap: Check = ({ meetings, survey }) => {
  const overlaps = new Map<string, { lengthM: number; meeting: (typeof meetings)[number] }>();
  for (const meeting of meetings) {
    if (meeting.meeting.kind !== 'overlap') continue;
    const { from, to } = meeting.meeting;
    const pair = `${meeting.a.line.id} ${meeting.b.line.id}`;
    const known = overlaps.get(pair) ?? { lengthM: 0, meeting };
    known.lengthM += xyDistanceM(from.point, to.point);
    overlaps.set(pair, known);
  }
  return [...overlaps.values()].flatMap(({ lengthM, meeting: { a, b, meeting } }) => {
    if (lengthM < leastOverlapM || meeting.kind !== 'overlap') return [];
    return finding('linesOverlap', 'warning', [a.line.id, b.line.id], {
      message: message('checks.linesOverlap.message', { thing: refTo(a.line), other: refTo(b.line), lengthM }),
      remedy: message('checks.linesOverlap.remedy'),
      at: survey.plane.toLonLat(meeting.from.point),
    });
  });
};
