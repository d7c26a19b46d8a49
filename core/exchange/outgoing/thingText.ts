import type { AnyFeature } from './featuresOf.ts';

/**
 * A feature's thing with all its fields as one text, for formats with no fields of their own. Only ASCII, so that no
 * format and no other program changes a letter of it.
 */
export function thingText({ properties }: AnyFeature): string {
  return JSON.stringify(properties).replace(
    /[\u007f-\uffff]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
