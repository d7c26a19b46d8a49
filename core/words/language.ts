import { english } from './en.ts';
import type { Language } from './message.ts';
import { pseudo } from './pseudo.ts';

/** Not English from the start: this may be loaded before English is, which writes with numbers of this language. */
let active: Language | null = null;

/** The language of every text from now on. Each thread sets its own at its start: window, workers, print. */
export function setLanguage(language: Language): void {
  active = language;
}

export function activeLanguage(): Language {
  return active ?? english;
}

/** By tag (BCP 47). `en-XA` is English made strange, by which tests see what does not come from the catalogue. */
const languages: ReadonlyMap<string, () => Language> = new Map([
  ['en', () => english],
  ['en-XA', pseudo],
]);

/** The language of a tag; English for one that there is none of. */
export function languageOf(tag: string | null): Language {
  return (languages.get(tag ?? 'en') ?? (() => english))();
}
