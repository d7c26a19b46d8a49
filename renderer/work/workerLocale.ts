import { activeLanguage, languageOf, setLanguage } from '../../core/words/language.ts';
import { activeLocale, setLocale } from '../../core/words/numbers/locale.ts';

/** The first thing that a worker hears: in which language and by whose habits it is to write. */
interface LocaleSaid {
  readonly locale: string;
  readonly language: string;
}

/** Tells a worker that was just started. */
export function sayLocale(worker: Pick<Worker, 'postMessage'>): void {
  worker.postMessage({ locale: activeLocale(), language: activeLanguage().tag } satisfies LocaleSaid);
}

/** In a worker, before it listens to anything else. */
export function hearLocale(): void {
  self.addEventListener('message', (event: MessageEvent<unknown>) => {
    if (!isLocaleSaid(event.data)) return;
    setLocale(event.data.locale);
    setLanguage(languageOf(event.data.language));
    event.stopImmediatePropagation();
  });
}

function isLocaleSaid(message: unknown): message is LocaleSaid {
  return typeof message === 'object' && message !== null && Object.keys(message).join() === 'locale,language';
}
