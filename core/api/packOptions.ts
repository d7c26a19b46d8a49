/** What can go into a handover pack; the cover and the cautions always do. */
export const packParts = [
  'map',
  'switches',
  'crossings',
  'tests',
  'power',
  'materials',
  'changes',
  'tags',
  'geoJson',
] as const;

export type PackPart = (typeof packParts)[number];

/** How a handover pack is to be made. */
export interface PackOptions {
  readonly parts: readonly PackPart[];
  /** Paper of the map sheets; everything else is A4. */
  readonly paper: 'A4' | 'A3';
  readonly orientation: 'portrait' | 'landscape';
  /** True scale 1 : this; null: the largest round one that takes six sheets or fewer. */
  readonly scaleDenominator: number | null;
  /** The handover that it belongs to; null: none, the property as it stands. */
  readonly handoverNumber: number | null;
  readonly preparedBy: string;
  readonly preparedFor: string;
  readonly note: string;
  /** By whose habits figures and dates are written, BCP 47; without it: English ones, figures as 1,250.5. */
  readonly locale?: string | undefined;
  /** The date to print, ISO 8601 (the caller knows what day it is). */
  readonly date: string;
}
