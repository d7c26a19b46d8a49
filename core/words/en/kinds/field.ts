import { capital } from '../../text.ts';
import type { Figures } from '../../types.ts';

/** What people are told of a field. */
export interface FieldWords {
  /** Inside of a sentence: "The width of the gateway". */
  readonly called: string;
  /** Over it in a form. */
  readonly label: string;
  /** Below it in a form: what it is for, where its figure comes from. */
  readonly hint?: string | ((values: null, f: Figures) => string);
  /** In an empty form field. */
  readonly placeholder?: string;
  /** What a form says for true where that is more than "Yes". */
  readonly yes?: string;
  /** Its choices by their codes. */
  readonly choices?: Readonly<Record<string, string>>;
  /** The fields within it, where it is a group. */
  readonly fields?: Readonly<Record<string, FieldWords>>;
}

/** A field whose label is its name. */
export function named(called: string) {
  return { called, label: capital(called) };
}

export const name = named('name');
export const note = named('note');
export const by = named('by');

export const status = {
  called: 'status',
  label: 'State',
  choices: { planned: 'Planned', built: 'Built: really there' },
};

export const growth = { ...named('growth'), choices: { clean: 'Clean', light: 'Light', heavy: 'Heavy' } };

export const lineEnd = { start: 'Start post', end: 'End post' };
export const hand = { left: 'Left', right: 'Right' };
