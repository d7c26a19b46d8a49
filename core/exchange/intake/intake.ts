import type { NewId, Refusal } from '../../model/edits/support/edit.ts';
import type { Project } from '../../model/project.ts';
import { type Message, message } from '../../words/message.ts';
import type { FeatureProblem, ImportAs, PreviewFeature } from '../preview/types.ts';

/** Where things stand while the features of a file are taken over. */
export interface Intake {
  project: Project;
  added: number;
  updated: number;
  unchanged: number;
  readonly problems: FeatureProblem[];
  readonly notes: Message[];
  /** Radii within which points of lines that stay in one place were drawn together, metres; one for each such line. */
  readonly standing: number[];
  readonly newId: NewId;
  /** What a feature of another program becomes. */
  readonly become: (feature: PreviewFeature) => ImportAs;
}

/** Notes that a feature can't be taken over. */
export function tell(intake: Intake, { index, name }: PreviewFeature, why: Message, whatToDo: Message): void {
  intake.problems.push({ index, name, why, whatToDo });
}

/** A refusal as the end of a sentence. */
export function clauseOf({ message: sentence }: Refusal): Message {
  return message('exchange.taken.refused', { sentence });
}
