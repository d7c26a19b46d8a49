import type { Shown } from '../../words/en/exchange/shown.ts';

/** Safe looks into parsed JSON of unknown make. */

export type RawObject = Readonly<Record<string, unknown>>;

export function isObject(value: unknown): value is RawObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** An own field of an object; never one of every object's. */
export function own(value: RawObject, field: string): unknown {
  return Object.hasOwn(value, field) ? value[field] : undefined;
}

const longestShown = 60;

/** A value as it can be shown in a sentence. */
export function shown(value: unknown): Shown {
  if (value === undefined) return { is: 'nothing' };
  if (isObject(value)) return { is: 'object' };
  if (Array.isArray(value)) return { is: 'list' };
  return { is: 'value', text: shownText(typeof value === 'string' ? value : JSON.stringify(value)) };
}

/** A text of a file as a sentence can hold it. */
export function shownText(text: string): string {
  return withoutControls(text).slice(0, longestShown);
}

/** Text on one line, without characters that do not print. */
export function withoutControls(text: string): string {
  return text.replace(/[\p{C}\s]+/gu, ' ').trim();
}
