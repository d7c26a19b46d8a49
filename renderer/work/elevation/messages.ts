import type { Area } from '../../../core/exchange/elevation/planGrid.ts';
import type { HeightGrid } from '../../../core/model/groundThings.ts';

export interface ElevationRequest {
  readonly file: Blob;
  /** The ground that heights are wanted of; null: all that the model has. */
  readonly area: Area | null;
}

export type ElevationRead =
  | { readonly ok: true; readonly grid: HeightGrid; readonly notes: readonly string[] }
  | { readonly ok: false; readonly message: string };
