import { deleteVertex } from '../../model/edits/deleteVertex.ts';
import { sameVertex } from '../../model/edits/support/path.ts';
import type { Project } from '../../model/project.ts';
import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** Vertices that lie on the one before them: harmless to the figures, in the way when the line is edited. */
export const duplicateVertices: Check = ({ survey }) => {
  const findings = [];
  for (const { line, stationsM, lengthM } of survey.lines.values()) {
    if (lengthM <= leastLengthM) continue;
    const doubled = stationsM.findIndex((stationM, i) => i > 0 && stationM - stationsM[i - 1]! <= leastLengthM);
    if (doubled < 0) continue;
    findings.push(
      finding('duplicateVertices', 'warning', [line.id], {
        message: message('checks.duplicateVertices.message', { thing: refTo(line) }),
        remedy: message('checks.duplicateVertices.remedy'),
        at: line.path[doubled] ?? null,
        fixes: [
          { label: message('checks.duplicateVertices.fix'), edit: (project) => withoutDoubles(project, line.id) },
        ],
      }),
    );
  }
  return findings;
};

const leastLengthM = 0.001;

function withoutDoubles(project: Project, lineId: string): Project {
  const { path } = project.fenceLine.get(lineId)!;
  const index = path.findIndex((vertex, i) => i > 0 && sameVertex(project, path[i - 1]!, vertex));
  if (index < 0) return project;
  // The last vertex stays, so that a closed line stays closed.
  const doubled = index === path.length - 1 ? index - 1 : index;
  return withoutDoubles(deleteVertex({ lineId, index: doubled })(project), lineId);
}
