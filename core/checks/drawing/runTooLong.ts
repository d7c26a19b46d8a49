import { refTo } from '../../model/refTo.ts';
import { lonLatAt } from '../../shapes/measuredPath.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { commonPractice, finding } from '../support/make.ts';

/** A run longer than a section may be, with no place where a switch could cut it. */
export const runTooLong: Check = ({ project, survey, property }) => {
  const { maxSectionM } = property.divide;
  return survey.network.edges.flatMap((edge) => {
    if (edge.kind !== 'run' || edge.lengthM <= maxSectionM) return [];
    const { lineId, fromM, toM, lengthM } = edge;
    const cuts = [...project.switchCandidate.values()].filter((place) => place.lineId === lineId);
    const atsM = [fromM, ...cuts.map(({ atM }) => atM).filter((atM) => atM > fromM && atM < toM), toM];
    atsM.sort((a, b) => a - b);
    if (atsM.every((atM, i) => i === 0 || atM - atsM[i - 1]! <= maxSectionM)) return [];
    const shape = survey.lines.get(lineId)!;
    return finding('runTooLong', 'warning', [lineId], {
      message: message('checks.runTooLong.message', { line: refTo(shape.line), lengthM, limitM: maxSectionM }),
      remedy: message('checks.runTooLong.remedy'),
      source: commonPractice,
      at: lonLatAt(shape, (fromM + toM) / 2),
      part: edge.key,
    });
  });
};
