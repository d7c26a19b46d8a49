import { xyDistanceM } from '../../geometry/vector.ts';
import { called } from '../../model/edits/support/find.ts';
import type { Check } from '../support/context.ts';
import { finding, headed } from '../support/make.ts';

/** Lines that part at a sharp angle lie within the snap tolerance of each other for a few metres. */
const leastOverlapM = 10;

/** Two lines drawn on top of each other: their fence would be counted twice. */
export const linesOverlap: Check = ({ meetings, survey, say }) => {
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
      message: `${headed(a.line)} and ${called(b.line)} lie on top of each other for ${say(lengthM)}; that fence is counted twice.`,
      remedy: 'Delete one of the two, or shorten it to where they part.',
      at: survey.plane.toLonLat(meeting.from.point),
    });
  });
};
