import type { Answer } from '../../../core/locate/faultSearch/faultSearchEdits.ts';
import type { FaultSearchStep } from '../../../core/locate/faultSearch/faultSearchWalk.ts';
import { faultSearchYardstick } from '../../../core/locate/faultSearch/faultSearchYardstick.ts';
import type { FaultSearch } from '../../../core/model/faultSearchThings.ts';
import { switchesOff } from '../../../core/sheets/yardstickInWords.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import { useOpenFile } from '../../state/appState.ts';
import { ReadingEntry } from './ReadingEntry.tsx';

/** The reading of one step of a search, judged by what is usual there with the switches so. */
export function FaultSearchReadingEntry({
  search,
  step,
  onAnswer,
}: {
  readonly search: FaultSearch;
  readonly step: FaultSearchStep;
  readonly onAnswer: (answer: Answer) => void;
}) {
  const { project, survey } = useOpenFile();
  const yardstick = faultSearchYardstick(powerOf(project, survey), search, step);
  const switches = switchesOff(project, new Set([...search.openedFirst, ...step.openIds]));
  return <ReadingEntry yardstick={yardstick} switches={switches} onAnswer={onAnswer} />;
}
