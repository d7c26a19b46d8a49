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
import type { Finding, Workspace } from './finding.ts';
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

interface Row {
  readonly rule: string;
  /** The pages that what it finds bears on, beside Draw, which has everything: its own first. */
  readonly workspaces: readonly Workspace[];
  readonly run: Check;
}

/** Every rule, where it stands in the window, and what looks for it. */
export const checkTable: readonly Row[] = [
  // Faults of the drawing itself.
  { rule: 'emptyProject', workspaces: ['draw'], run: emptyProject },
  { rule: 'coordinatesOutOfRange', workspaces: ['draw'], run: coordinatesOutOfRange },
  { rule: 'lineWithoutLength', workspaces: ['draw'], run: lineWithoutLength },
  { rule: 'duplicateVertices', workspaces: ['draw'], run: duplicateVertices },
  { rule: 'selfCrossingLine', workspaces: ['draw'], run: selfCrossingLine },
  { rule: 'linesCrossUnjoined', workspaces: ['draw'], run: linesCrossUnjoined },
  { rule: 'linesOverlap', workspaces: ['draw'], run: linesOverlap },
  { rule: 'endNearlyTouches', workspaces: ['draw'], run: endNearlyTouches },
  { rule: 'unknownFenceType', workspaces: ['draw', 'power'], run: unknownFenceType },
  { rule: 'plainWiresNotEntered', workspaces: ['draw', 'order'], run: plainWiresNotEntered },
  { rule: 'gatewayTooWide', workspaces: ['draw'], run: gatewayTooWide },
  { rule: 'gatewayOffLine', workspaces: ['draw'], run: gatewayOffLine },
  { rule: 'gatewaysOverlap', workspaces: ['draw'], run: gatewaysOverlap },
  { rule: 'touchInOpening', workspaces: ['draw'], run: touchInOpening },
  { rule: 'crossingLoose', workspaces: ['draw', 'divide'], run: crossingLoose },
  { rule: 'missingCrossing', workspaces: ['draw', 'divide', 'power'], run: missingCrossing },
  { rule: 'switchDangling', workspaces: ['divide'], run: switchDangling },
  { rule: 'switchUseless', workspaces: ['divide'], run: switchUseless },
  { rule: 'noEnergiser', workspaces: ['draw', 'divide', 'power'], run: noEnergiser },
  { rule: 'energiserTouchesNothing', workspaces: ['draw', 'divide', 'power'], run: energiserTouchesNothing },
  { rule: 'leadOutLoose', workspaces: ['draw', 'power'], run: leadOutLoose },
  { rule: 'deadPart', workspaces: ['divide', 'power'], run: deadPart },
  { rule: 'sectionOverLimit', workspaces: ['divide'], run: sectionOverLimit },
  { rule: 'runTooLong', workspaces: ['divide'], run: runTooLong },
  { rule: 'bendTooTight', workspaces: ['draw'], run: bendTooTight },
  { rule: 'trenchNearTrench', workspaces: ['draw'], run: trenchNearTrench },
  { rule: 'trenchNearService', workspaces: ['draw'], run: trenchNearService },
  // Rules of installation: the standard's, and those of common practice.
  { rule: 'twoEnergisers', workspaces: ['power'], run: twoEnergisers },
  { rule: 'fencesTooNear', workspaces: ['draw'], run: fencesTooNear },
  { rule: 'earthElectrodeDistance', workspaces: ['power'], run: earthElectrodeDistance },
  { rule: 'barbedWire', workspaces: ['power'], run: barbedWire },
  { rule: 'powerLineVoltage', workspaces: ['draw'], run: powerLineVoltage },
  { rule: 'powerLineAngle', workspaces: ['draw'], run: powerLineAngle },
  { rule: 'powerLineHeights', workspaces: ['draw'], run: powerLineHeights },
  { rule: 'overheadCrossing', workspaces: ['draw'], run: overheadCrossing },
  { rule: 'warningSigns', workspaces: ['draw'], run: warningSigns },
  { rule: 'publicUse', workspaces: ['draw'], run: publicUse },
  { rule: 'publicWayCrossesFence', workspaces: ['draw'], run: publicWayCrossesFence },
  { rule: 'earthAcrossGateway', workspaces: ['power'], run: earthAcrossGateway },
  { rule: 'switchWrongSide', workspaces: ['divide'], run: switchWrongSide },
  { rule: 'buildingWire', workspaces: ['power'], run: buildingWire },
  { rule: 'cableInTrench', workspaces: ['draw', 'record'], run: cableInTrench },
  { rule: 'trenchDepth', workspaces: ['draw', 'record'], run: trenchDepth },
  { rule: 'risersSealed', workspaces: ['record'], run: risersSealed },
  { rule: 'recordedElsewhere', workspaces: ['find'], run: recordedElsewhere },
  { rule: 'tiePostMoved', workspaces: ['find'], run: tiePostMoved },
  { rule: 'recordWithoutCrossing', workspaces: ['record', 'find'], run: recordWithoutCrossing },
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
  for (const { workspaces, run } of checkTable) {
    for (const found of run(context)) findings.push({ ...found, workspaces });
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
