import { activeLocale } from './numbers/locale.ts';

/** Days and times: ISO 8601 in files, by the habits of the active locale on screens and sheets. */

const formats = new Map<string, Intl.DateTimeFormat>();

function format(options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const locale = activeLocale();
  const key = `${locale} ${JSON.stringify(options)}`;
  let made = formats.get(key);
  if (!made) {
    made = new Intl.DateTimeFormat(locale, { calendar: 'gregory', numberingSystem: 'latn', ...options });
    formats.set(key, made);
  }
  return made;
}

/** The month in words where the words are English, as all others here; in figures elsewhere. */
function dayForm(): Intl.DateTimeFormatOptions {
  return /^en\b/.test(activeLocale())
    ? { day: 'numeric', month: 'long', year: 'numeric' }
    : { day: '2-digit', month: '2-digit', year: 'numeric' };
}

/** "12 May 2026", "May 12, 2026", "12.05.2026" from an ISO 8601 date or date and time; anything else is given back as it came. */
export function dateText(iso: string): string {
  const parts = /^(\d{4})-(\d{2})-(\d{2})/.exec(iso);
  if (!parts) return iso;
  const [year, month, day] = parts.slice(1).map(Number) as [number, number, number];
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day);
  if (date.getUTCMonth() !== month - 1) return iso;
  return format({ ...dayForm(), timeZone: 'UTC' }).format(date);
}

/** "14:05" from an ISO 8601 date and time by the clock on the wall; empty where it has no time. */
export function timeText(iso: string): string {
  const parts = /T(\d{2}):(\d{2})/.exec(iso);
  if (!parts) return '';
  const time = new Date(Date.UTC(2000, 0, 1, Number(parts[1]), Number(parts[2])));
  return format({ hour: '2-digit', minute: '2-digit', timeZone: 'UTC' }).format(time);
}

/** "12 May 2026, 14:05" of a moment, by this computer's clock and time zone. */
export function momentText(moment: Date): string {
  const minute = localMinute(moment);
  return `${dateText(minute)}, ${timeText(minute)}`;
}

/** The day by the clock on the wall, ISO 8601. */
export function localDate(now: Date): string {
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** The minute by the clock on the wall, ISO 8601. */
export function localMinute(now: Date): string {
  return `${localDate(now)}T${two(now.getHours())}:${two(now.getMinutes())}`;
}

/** The day by this computer's clock and time zone, ISO 8601. */
export function today(): string {
  return localDate(new Date());
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}
