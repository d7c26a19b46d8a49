import { kindProperty } from './ours.ts';
import { isObject, own, type RawObject } from './raw.ts';

const longestText = 10_000_000;

/**
 * A thing of ours, with all its fields, as the one text that formats carry which know no fields of their own. Null
 * where it is none.
 */
export function oursInText(text: string | undefined): RawObject | null {
  if (text === undefined || text.length > longestText) return null;
  try {
    const value = JSON.parse(text) as unknown;
    return isObject(value) && own(value, kindProperty) !== undefined ? value : null;
  } catch {
    return null;
  }
}
