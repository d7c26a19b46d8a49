import { localDate } from '../../state/localDate.ts';

/** The minute by the clock on the wall, ISO 8601. */
export function localMinute(now: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${localDate(now)}T${two(now.getHours())}:${two(now.getMinutes())}`;
}
