import type { Answer } from '../../../core/locate/hunt/huntEdits.ts';
import type { HuntStep } from '../../../core/locate/hunt/huntWalk.ts';
import { huntYardstick } from '../../../core/locate/hunt/huntYardstick.ts';
import type { FaultHunt } from '../../../core/model/huntThings.ts';
import { switchesOff } from '../../../core/sheets/yardstickInWords.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import { useOpenFile } from '../../state/appState.ts';
import { ReadingEntry } from './ReadingEntry.tsx';

/** The reading of one step of a search, judged by what is usual there with the switches so. */
export function HuntReadingEntry({
  hunt,
  step,
  onAnswer,
}: {
  readonly hunt: FaultHunt;
  readonly step: HuntStep;
  readonly onAnswer: (answer: Answer) => void;
}) {
  const { project, survey } = useOpenFile();
  const yardstick = huntYardstick(powerOf(project, survey), hunt, step);
  const switches = switchesOff(project, new Set([...hunt.openedFirst, ...step.openIds]));
  return <ReadingEntry yardstick={yardstick} switches={switches} onAnswer={onAnswer} />;
}
