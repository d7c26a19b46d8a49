import type { LonLat } from '../model/things.ts';

/** Which sheet to print to take along to a dig; `date` is the date to print, ISO 8601. */
export type FindOptions = {
  /** By whose habits figures and dates are written, BCP 47; without it: English ones, figures as 1,250.5. */
  readonly locale?: string | undefined;
} /** `gatewayId`: or the id of a crossing left in the ground that is drawn no longer. */ & (
  | { readonly sheet: 'crossing'; readonly gatewayId: string; readonly date: string }
  | { readonly sheet: 'dig'; readonly dig: DigPlace; readonly date: string }
);

/** Where somebody will dig: see `Dig` in `core/locate`. */
export interface DigPlace {
  readonly shape: 'point' | 'line' | 'area';
  readonly path: readonly LonLat[];
  readonly errorM: number;
  readonly withinM: number;
}
