/**
 * By whose habits figures and dates are written and read: a BCP 47 tag such as "de-CH". The words stay English. Each
 * thread has its own and sets it once, at its start or by the message that hands it work.
 */
export const usualLocale = 'en-GB';

let active = usualLocale;

export function activeLocale(): string {
  return active;
}

/** A tag that this computer knows nothing of leaves the usual habits in force. */
export function setLocale(tag: string): void {
  active = isKnown(tag) ? tag : usualLocale;
}

function isKnown(tag: string): boolean {
  try {
    return Intl.NumberFormat.supportedLocalesOf(tag).length > 0;
  } catch {
    return false;
  }
}

/** The habits of the active locale that readers must know. */
export interface Habits {
  /** "." or ",". */
  readonly decimal: string;
  /** What parts thousands; empty: nothing. */
  readonly group: string;
}

const known = new Map<string, Habits>();

export function activeHabits(): Habits {
  let habits = known.get(active);
  if (!habits) {
    const parts = numberFormat({ minimumFractionDigits: 1 }).formatToParts(1_234_567.8);
    const sign = (type: string) => parts.find((part) => part.type === type)?.value ?? '';
    habits = { decimal: sign('decimal'), group: sign('group') };
    known.set(active, habits);
  }
  return habits;
}

const formats = new Map<string, Intl.NumberFormat>();

/** A format of the active locale, in the figures 0 to 9; kept, since making one takes long. */
export function numberFormat(options: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = `${active} ${JSON.stringify(options)}`;
  let format = formats.get(key);
  if (!format) {
    format = new Intl.NumberFormat(active, { numberingSystem: 'latn', signDisplay: 'negative', ...options });
    formats.set(key, format);
  }
  return format;
}
