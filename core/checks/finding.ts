import type { LonLat } from '../geometry/types.ts';
import type { NewId } from '../model/edits/support/edit.ts';
import type { Project } from '../model/project.ts';

/** Something a check has to say about the drawing. */
export interface Finding {
  /** Rule and the ids it is about, so that the same finding keeps its identity from one edit to the next. */
  readonly id: string;
  readonly rule: string;
  readonly severity: 'error' | 'warning' | 'notKnown' | 'hint';
  /** One sentence: what is wrong, where, with figures. */
  readonly message: string;
  /** What to do, as a sentence; for `notKnown`, what to enter. */
  readonly remedy: string;
  /** The rule's source: a standard, or "common practice, no source"; null for drawing faults. */
  readonly source: string | null;
  readonly thingIds: readonly string[];
  readonly at: LonLat | null;
  readonly fixes: readonly Fix[];
}

/** A one-click fix. */
export interface Fix {
  /** "Join the lines here". */
  readonly label: string;
  readonly edit: (project: Project, newId: NewId) => Project;
  /** It takes things away: what is built is asked about first. */
  readonly deletes?: true;
}
