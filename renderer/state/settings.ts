import type { Result } from '../../core/api/result.ts';
import { noWindowSettings, type WindowSettings } from '../../core/api/windowSettings.ts';
import { languageOf, setLanguage } from '../../core/words/language.ts';
import { setLocale } from '../../core/words/numbers/locale.ts';
import { useApp } from './appState.ts';
import { report } from './report.ts';
import { host } from './session.ts';

const narrowestPx = 340;
const widestPx = 720;
const usualWidthPx = 420;

let settings: WindowSettings = noWindowSettings;

/** The system's habits of numbers and dates, as far as a page is told of them. */
export const systemLocale = navigator.language;

/** The look and the numbers until the user's own settings are known: the system's. */
export function showAsSystem(): void {
  showTheme(systemTheme());
  showLocale(null);
}

/** Shows the window by the user's settings. */
export function showSettings(kept: Result<WindowSettings>): void {
  if (kept.ok) settings = kept.value;
  showTheme(settings.theme ?? systemTheme());
  showLocale(settings.locale);
  showLanguage(settings.language);
  useApp.setState({ bookWidthPx: withinReason(settings.bookWidthPx ?? usualWidthPx) });
}

export function setTheme(theme: 'light' | 'dark'): void {
  showTheme(theme);
  keep({ ...settings, theme });
}

/** Numbers and dates by the habits of another place; null: the system's. */
export function setNumbersAndDates(locale: string | null): void {
  showLocale(locale);
  keep({ ...settings, locale });
}

export function setBookWidth(bookWidthPx: number): void {
  const widthPx = withinReason(bookWidthPx);
  if (widthPx === useApp.getState().bookWidthPx) return;
  useApp.setState({ bookWidthPx: widthPx });
  keep({ ...settings, bookWidthPx: widthPx });
}

/** The least and the greatest width that the inspector can have. */
export const bookWidthLimitsPx = [narrowestPx, widestPx] as const;

function withinReason(widthPx: number): number {
  return Math.round(Math.min(widestPx, Math.max(narrowestPx, widthPx)));
}

function showLocale(locale: string | null): void {
  setLocale(locale ?? systemLocale);
  useApp.setState({ locale });
}

function showLanguage(tag: string | null): void {
  const language = languageOf(tag);
  setLanguage(language);
  document.documentElement.lang = language.tag;
  useApp.setState({ language: language.tag });
}

function systemTheme(): 'light' | 'dark' {
  return window.matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
}

function showTheme(theme: 'light' | 'dark'): void {
  document.documentElement.dataset.theme = theme;
  useApp.setState({ theme });
}

const quietMs = 400;
let waiting: ReturnType<typeof setTimeout> | undefined;

/** Keeps the settings once they have stood still for a moment (the inspector's edge is dragged in many small steps). */
function keep(next: WindowSettings): void {
  settings = next;
  clearTimeout(waiting);
  waiting = setTimeout(() => {
    void host()
      .project.keepWindowSettings(settings)
      .then((kept) => {
        if (!kept.ok) report(kept.problem);
      });
  }, quietMs);
}
