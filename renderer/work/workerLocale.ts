import { activeLocale, setLocale } from '../../core/words/numbers/locale.ts';

/** The first thing that a worker hears: by whose habits it is to write figures. */
interface LocaleSaid {
  readonly locale: string;
}

/** Tells a worker that was just started. */
export function sayLocale(worker: Pick<Worker, 'postMessage'>): void {
  worker.postMessage({ locale: activeLocale() } satisfies LocaleSaid);
}

/** In a worker, before it listens to anything else. */
export function hearLocale(): void {
  self.addEventListener('message', (event: MessageEvent<unknown>) => {
    if (!isLocaleSaid(event.data)) return;
    setLocale(event.data.locale);
    event.stopImmediatePropagation();
  });
}

function isLocaleSaid(message: unknown): message is LocaleSaid {
  return typeof message === 'object' && message !== null && Object.keys(message).join() === 'locale';
}
