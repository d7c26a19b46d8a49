import { type AppState, useApp } from './appState.ts';

const storageKey = 'undergate.window';

/** What a window remembers for itself, outside any project file. */
interface WindowSettings {
  readonly theme: AppState['theme'];
  readonly bookWidthPx: number;
}

const narrowest = 340;
const widest = 720;

export function readSettings(): WindowSettings {
  const prefersDark = window.matchMedia('(prefers-color-scheme: dark)').matches;
  const fallback: WindowSettings = { theme: prefersDark ? 'dark' : 'light', bookWidthPx: 420 };
  try {
    const kept = JSON.parse(localStorage.getItem(storageKey) ?? '{}') as Partial<WindowSettings>;
    return {
      theme: kept.theme === 'light' || kept.theme === 'dark' ? kept.theme : fallback.theme,
      bookWidthPx: Number.isFinite(kept.bookWidthPx) ? withinReason(kept.bookWidthPx!) : fallback.bookWidthPx,
    };
  } catch {
    return fallback;
  }
}

export function keepSettings(change: Partial<WindowSettings>): void {
  localStorage.setItem(storageKey, JSON.stringify({ ...readSettings(), ...change }));
}

export function withinReason(bookWidthPx: number): number {
  return Math.round(Math.min(widest, Math.max(narrowest, bookWidthPx)));
}

export function setTheme(theme: AppState['theme']): void {
  document.documentElement.dataset.theme = theme;
  useApp.setState({ theme });
  keepSettings({ theme });
}
