import { type Project, propertyOf } from '../../../core/model/project.ts';
import type { CrossingRow } from '../../../core/record/crossingRegister.ts';
import type { Survey } from '../../../core/survey/types.ts';
import { formatTape } from '../../../core/words/numbers/write.ts';
import type { RecordedCrossing, RecordOverlay } from '../../map/staticLayer/drawRecord.ts';
import { recordView } from './useRecord.ts';

let kept: { readonly project: Project; readonly survey: Survey; readonly overlay: RecordOverlay } | null = null;

/** What the map shows of the records; the same object while nothing changed. */
export function recordOverlay(project: Project, survey: Survey): RecordOverlay {
  if (kept?.project !== project || kept.survey !== survey) {
    const { crossings, differences } = recordView(project, survey);
    const { units } = propertyOf(project);
    const recorded = crossings.filter(({ built }) => built.points.some(({ basis }) => basis !== 'none'));
    const overlay: RecordOverlay = {
      built: recorded.map((row) => recordedCrossing(row, (lengthM) => formatTape(lengthM, units))),
      planned: [
        ...differences.filter(({ movedM }) => movedM > 0).map(({ plannedXy }) => plannedXy),
        ...recorded.map(({ built }) => built.figures.path),
      ],
    };
    kept = { project, survey, overlay };
  }
  return kept.overlay;
}

/** The same for Find: where crossings lie in place of where they were drawn, without the tapes and the plans. */
export function foundOverlay(project: Project, survey: Survey): RecordOverlay {
  const { built } = recordOverlay(project, survey);
  return { built: built.map((crossing) => ({ ...crossing, points: [] })), planned: [] };
}

function recordedCrossing({ built }: CrossingRow, words: (lengthM: number) => string): RecordedCrossing {
  return {
    gatewayId: built.figures.gateway.id,
    paths: built.courses.map(({ path }) => path),
    assumed: built.bowAssumed,
    points: built.points.map(({ places, basis, ties }) => ({
      places: places.map(({ xy }) => xy),
      certain: basis === 'measured',
      ties: ties.map((tie) => ({ from: tie.xy, lengthM: tie.distanceM, text: words(tie.distanceM) })),
    })),
  };
}
