import type { Project } from '../model/project.ts';
import { allAtOnce, type Steps } from '../model/steps.ts';
import type { Survey } from '../survey/types.ts';
import { bendTooTight } from './drawing/bendTooTight.ts';
import { coordinatesOutOfRange } from './drawing/coordinatesOutOfRange.ts';
import { crossingLoose } from './drawing/crossingLoose.ts';
import { deadPart } from './drawing/deadPart.ts';
import { duplicateVertices } from './drawing/duplicateVertices.ts';
import { emptyProject } from './drawing/emptyProject.ts';
import { endNearlyTouches } from './drawing/endNearlyTouches.ts';
import { energiserTouchesNothing } from './drawing/energiserTouchesNothing.ts';
import { gatewayOffLine } from './drawing/gatewayOffLine.ts';
import { gatewaysOverlap } from './drawing/gatewaysOverlap.ts';
import { gatewayTooWide } from './drawing/gatewayTooWide.ts';
import { leadOutLoose } from './drawing/leadOutLoose.ts';
import { linesCrossUnjoined } from './drawing/linesCrossUnjoined.ts';
import { linesOverlap } from './drawing/linesOverlap.ts';
import { lineWithoutLength } from './drawing/lineWithoutLength.ts';
import { missingCrossing } from './drawing/missingCrossing.ts';
import { noEnergiser } from './drawing/noEnergiser.ts';
import { plainWiresNotEntered } from './drawing/plainWiresNotEntered.ts';
import { runTooLong } from './drawing/runTooLong.ts';
import { sectionOverLimit } from './drawing/sectionOverLimit.ts';
import { selfCrossingLine } from './drawing/selfCrossingLine.ts';
import { switchDangling } from './drawing/switchDangling.ts';
import { switchUseless } from './drawing/switchUseless.ts';
import { touchInOpening } from './drawing/touchInOpening.ts';
import { trenchNearService } from './drawing/trenchNearService.ts';
import { trenchNearTrench } from './drawing/trenchNearTrench.ts';
import { unknownFenceType } from './drawing/unknownFenceType.ts';
import type { Finding } from './finding.ts';
import { barbedWire } from './installation/barbedWire.ts';
import { buildingWire } from './installation/buildingWire.ts';
import { cableInTrench } from './installation/cableInTrench.ts';
import { earthAcrossGateway } from './installation/earthAcrossGateway.ts';
import { earthElectrodeDistance } from './installation/earthElectrodeDistance.ts';
import { fencesTooNear } from './installation/fencesTooNear.ts';
import { overheadCrossing } from './installation/overheadCrossing.ts';
import { powerLineAngle } from './installation/powerLineAngle.ts';
import { powerLineHeights } from './installation/powerLineHeights.ts';
import { powerLineVoltage } from './installation/powerLineVoltage.ts';
import { publicUse } from './installation/publicUse.ts';
import { publicWayCrossesFence } from './installation/publicWayCrossesFence.ts';
import { recordedElsewhere, recordWithoutCrossing, tiePostMoved } from './installation/recordedElsewhere.ts';
import { risersSealed } from './installation/risersSealed.ts';
import { switchWrongSide } from './installation/switchWrongSide.ts';
import { trenchDepth } from './installation/trenchDepth.ts';
import { twoEnergisers } from './installation/twoEnergisers.ts';
import { warningSigns } from './installation/warningSigns.ts';
import { type Check, CheckContext } from './support/context.ts';

/** Faults of the drawing itself. */
const drawingChecks: readonly Check[] = [
  emptyProject,
  coordinatesOutOfRange,
  lineWithoutLength,
  duplicateVertices,
  selfCrossingLine,
  linesCrossUnjoined,
  linesOverlap,
  endNearlyTouches,
  unknownFenceType,
  plainWiresNotEntered,
  gatewayTooWide,
  gatewayOffLine,
  gatewaysOverlap,
  touchInOpening,
  crossingLoose,
  missingCrossing,
  switchDangling,
  switchUseless,
  noEnergiser,
  energiserTouchesNothing,
  leadOutLoose,
  deadPart,
  sectionOverLimit,
  runTooLong,
  bendTooTight,
  trenchNearTrench,
  trenchNearService,
];

/** Rules of installation: the standard's, and those of common practice. */
const installationChecks: readonly Check[] = [
  twoEnergisers,
  fencesTooNear,
  earthElectrodeDistance,
  barbedWire,
  powerLineVoltage,
  powerLineAngle,
  powerLineHeights,
  overheadCrossing,
  warningSigns,
  publicUse,
  publicWayCrossesFence,
  earthAcrossGateway,
  switchWrongSide,
  buildingWire,
  cableInTrench,
  trenchDepth,
  risersSealed,
  recordedElsewhere,
  tiePostMoved,
  recordWithoutCrossing,
];

const order = { error: 0, warning: 1, notKnown: 2, hint: 3 } as const;

/**
 * Everything that the rules have to say about a drawing, the worst first. The same finding keeps its id from one edit
 * to the next. What can't be judged from what is drawn is said to be not known; silence means only that nothing was
 * found, never that an installation is safe.
 */
export function allFindings(project: Project, survey: Survey): Finding[] {
  return allAtOnce(findingsSteps(project, survey));
}

/** The same, one check after another. */
export function* findingsSteps(project: Project, survey: Survey): Steps<Finding[]> {
  const context = new CheckContext(project, survey);
  const findings: Finding[] = [];
  for (const check of [...drawingChecks, ...installationChecks]) {
    for (const finding of check(context)) findings.push(finding);
    yield;
  }
  return withOwnIds(findings).sort((a, b) => order[a.severity] - order[b.severity]);
}

/** Numbers the second and later findings of one rule about the same things. */
function withOwnIds(findings: readonly Finding[]): Finding[] {
  const counts = new Map<string, number>();
  return findings.map((finding) => {
    const count = (counts.get(finding.id) ?? 0) + 1;
    counts.set(finding.id, count);
    return count === 1 ? finding : { ...finding, id: `${finding.id}#${count}` };
  });
}
