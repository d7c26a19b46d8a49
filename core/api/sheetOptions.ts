import type { LonLat } from '../model/things.ts';

/** How the map sheet is to be printed. */
export interface SheetOptions {
  readonly paper: 'A4' | 'A3';
  readonly orientation: 'portrait' | 'landscape';
  /** True scale 1 : this. */
  readonly scaleDenominator: number;
  /** What stands in the middle of the map; null: the middle of the property. */
  readonly centre: LonLat | null;
  /** Distance between grid lines; null: a round figure that suits the scale. */
  readonly gridM: number | null;
  readonly withSwitchRegister: boolean;
  readonly withCrossingSchedule: boolean;
  readonly withTestSheets: boolean;
  /** By whose habits figures and dates are written, BCP 47; without it: English ones, figures as 1,250.5. */
  readonly locale?: string | undefined;
  /** The date to print, ISO 8601 (the caller knows what day it is). */
  readonly date: string;
}
