import { english } from './en.ts';
import type { Language } from './message.ts';

let active: Language = english;

/** The language of every text from now on. Each thread sets its own at its start: window, workers, print. */
export function setLanguage(language: Language): void {
  active = language;
}

export function activeLanguage(): Language {
  return active;
}
