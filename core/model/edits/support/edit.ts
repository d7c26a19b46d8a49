import { figures } from '../../../words/figures.ts';
import type { Message } from '../../../words/message.ts';
import type { Project } from '../../project.ts';
import type { Kind } from '../../things.ts';

/** Makes a new project of an old one; the old one stays as it was. */
export type Edit = (project: Project) => Project;

/** Tells why an edit can't be made on a project, or null where it can. */
export type WhyNot = (project: Project) => Refusal | null;

/** Gives a new thing an id that no thing of its kind has. */
export type NewId = (kind: Kind) => string;

/** Why an edit is refused. */
export interface Refusal {
  /** One short word-pair for code to look at: `tooWide`, `notFound`. */
  readonly code: string;
  /** What is wrong, where, and what to do: whole sentences. */
  readonly message: Message;
}

/** Thrown by an edit that its `whyNot...` would have refused. Its own message is for logs: people read the refusal's. */
export class EditRefused extends Error {
  readonly refusal: Refusal;

  constructor(refusal: Refusal) {
    super(figures('metric').say(refusal.message));
    this.name = 'EditRefused';
    this.refusal = refusal;
  }
}

/** An edit that asks first and throws `EditRefused` where the answer is no. */
export function guarded(whyNot: WhyNot, edit: Edit): Edit {
  return (project) => {
    const refusal = whyNot(project);
    if (refusal) throw new EditRefused(refusal);
    return edit(project);
  };
}

/** The first refusal of some questions, asked in order. */
export function firstRefusal(...questions: readonly (() => Refusal | null)[]): Refusal | null {
  return firstRefusalOf(questions);
}

/** `firstRefusal` for any number of questions. */
export function firstRefusalOf(questions: Iterable<() => Refusal | null>): Refusal | null {
  for (const question of questions) {
    const refusal = question();
    if (refusal) return refusal;
  }
  return null;
}
