import { afterEach, expect, it, vi } from 'vitest';
import { activeLanguage, languageOf, setLanguage } from '../../../core/words/language.ts';
import { activeLocale, setLocale, usualLocale } from '../../../core/words/numbers/locale.ts';
import { hearLocale, sayLocale } from '../../../renderer/work/workerLocale.ts';

afterEach(() => {
  vi.unstubAllGlobals();
  setLocale(usualLocale);
  setLanguage(languageOf(null));
});

it('a worker writes as the window that started it, and hears nothing of it otherwise', () => {
  const worker = new EventTarget();
  vi.stubGlobal('self', worker);
  const others: unknown[] = [];
  hearLocale();
  worker.addEventListener('message', (event) => others.push((event as MessageEvent).data));
  const post = (data: unknown) => worker.dispatchEvent(new MessageEvent('message', { data }));

  setLocale('de-CH');
  setLanguage(languageOf('en-XA'));
  sayLocale({
    postMessage: (message: unknown) => {
      // As in another thread: it knows only what it is told.
      setLocale(usualLocale);
      setLanguage(languageOf(null));
      post(message);
    },
  });
  expect(activeLocale()).toBe('de-CH');
  expect(activeLanguage().tag).toBe('en-XA');
  expect(others).toEqual([]);
  post({ type: 'reset', locale: 'fr-FR' });
  expect(activeLocale()).toBe('de-CH');
  expect(activeLanguage().tag).toBe('en-XA');
  expect(others).toHaveLength(1);
});
