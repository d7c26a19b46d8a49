/** What a window looks like for this user, whichever file is open. `null`: as the system, or the app, has it. */
export interface WindowSettings {
  readonly theme: 'light' | 'dark' | null;
  readonly bookWidthPx: number | null;
  /** By whose habits numbers and dates are written and read, BCP 47. */
  readonly locale: string | null;
  /** The language of all texts, by its tag. */
  readonly language: string | null;
}

export const noWindowSettings: WindowSettings = { theme: null, bookWidthPx: null, locale: null, language: null };
