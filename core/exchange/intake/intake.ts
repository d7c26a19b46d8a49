import type { NewId, Refusal } from '../../model/edits/support/edit.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import { figures } from '../../words/figures.ts';
import type { FeatureProblem, ImportAs, PreviewFeature } from '../preview/types.ts';

/** Where things stand while the features of a file are taken over. */
export interface Intake {
  project: Project;
  added: number;
  updated: number;
  unchanged: number;
  readonly problems: FeatureProblem[];
  readonly notes: string[];
  /** Radii within which points of lines that stay in one place were drawn together, metres; one for each such line. */
  readonly standing: number[];
  readonly newId: NewId;
  /** What a feature of another program becomes. */
  readonly become: (feature: PreviewFeature) => ImportAs;
}

/** Notes that a feature can't be taken over. */
export function tell(intake: Intake, { index, name }: PreviewFeature, why: string, whatToDo: string): void {
  intake.problems.push({ index, name, why, whatToDo });
}

/** A refusal as the end of a sentence. */
export function clauseOf({ message }: Refusal, project: Project): string {
  const sentence = figures(propertyOf(project).units).say(message);
  return sentence.charAt(0).toLowerCase() + sentence.slice(1).replace(/\.$/, '');
}
