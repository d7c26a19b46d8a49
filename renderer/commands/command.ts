import type { AppState } from '../state/appState.ts';

/** Something the user can do from a button or a key. Defined once; every button and the list of keys read it. */
export interface Command {
  /** Its label stands under it in the catalogue: `window.frame.commands.labels`. */
  readonly id: string;
  /** Such as "Ctrl+Z"; on a Mac the command key serves for Ctrl. */
  readonly key?: string;
  /** Why it can't be done now, or null. */
  readonly whyNot: (state: AppState) => string | null;
  readonly run: () => void;
}
