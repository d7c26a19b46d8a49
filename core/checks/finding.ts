import type { LonLat } from '../geometry/types.ts';
import type { NewId } from '../model/edits/support/edit.ts';
import type { Project } from '../model/project.ts';
import type { Message } from '../words/message.ts';

/** The pages of the window that findings stand on. Draw has them all. */
export type Workspace = 'draw' | 'divide' | 'power' | 'order' | 'record' | 'find';

/** Something a check has to say about the drawing. */
export interface Finding {
  /** Rule and the ids it is about, so that the same finding keeps its identity from one edit to the next. */
  readonly id: string;
  readonly rule: string;
  /** The pages that it bears on. */
  readonly workspaces: readonly Workspace[];
  readonly severity: 'error' | 'warning' | 'notKnown' | 'hint';
  /** One sentence: what is wrong, where, with figures. */
  readonly message: Message;
  /** What to do, as a sentence; for `notKnown`, what to enter. */
  readonly remedy: Message;
  /** The rule's source: a standard, or "common practice, no source"; null for drawing faults. */
  readonly source: Message | null;
  readonly thingIds: readonly string[];
  readonly at: LonLat | null;
  readonly fixes: readonly Fix[];
}

/** A finding as its check makes it; the table of checks says where it stands. */
export type Found = Omit<Finding, 'workspaces'>;

/** A one-click fix. */
export interface Fix {
  /** "Join the lines here". */
  readonly label: Message;
  readonly edit: (project: Project, newId: NewId) => Project;
  /** It takes things away: what is built is asked about first. */
  readonly deletes?: true;
}
