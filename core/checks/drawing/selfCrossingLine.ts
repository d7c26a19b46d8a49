import { type SelfIntersection, selfIntersections } from '../../geometry/segments.ts';
import type { Xy } from '../../geometry/types.ts';
import { fixSelfCrossing } from '../../model/edits/fixSelfCrossing.ts';
import { keptWhile } from '../../model/memo.ts';
import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** A line that crosses itself where it has no corner: the wires are not joined there. */
export const selfCrossingLine: Check = ({ survey, property }) => {
  const findings = [];
  for (const { line, xy } of survey.lines.values()) {
    if (xy.length < 4) continue;
    const crossings = crossingsOf(xy, property.snapToleranceM);
    const [first] = crossings;
    if (first?.meeting.kind !== 'cross') continue;
    const at = survey.plane.toLonLat(first.meeting.point);
    findings.push(
      finding('selfCrossingLine', 'warning', [line.id], {
        message: message('checks.selfCrossingLine.message', { thing: refTo(line), more: crossings.length - 1 }),
        remedy: message('checks.selfCrossingLine.remedy'),
        at,
        fixes: [{ label: message('checks.selfCrossingLine.fix'), edit: fixSelfCrossing({ lineId: line.id }) }],
      }),
    );
  }
  return findings;
};

const crossingsOf = keptWhile((xy: readonly Xy[], toleranceM: number): readonly SelfIntersection[] =>
  selfIntersections(xy, toleranceM).filter(({ meeting }) => meeting.kind === 'cross'),
);
