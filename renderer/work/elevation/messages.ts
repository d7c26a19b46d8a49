import type { HeightUnit, HeightUnitFound } from '../../../core/exchange/elevation/heightUnit.ts';
import type { Area } from '../../../core/exchange/elevation/planGrid.ts';
import type { GeoTiffSystem } from '../../../core/exchange/image/geoTiffTags.ts';
import type { HeightGrid } from '../../../core/model/groundThings.ts';
import type { Message } from '../../../core/words/message.ts';

export interface ElevationRequest {
  readonly file: Blob;
  /** The ground that heights are wanted of; null: all that the model has. */
  readonly area: Area | null;
  /** The unit that the user chose; null: what the file says. */
  readonly unit: HeightUnit | null;
  /** The coordinate system that the user chose; null: what the file says. */
  readonly system: { readonly name: Message; readonly definition: string } | null;
}

export type ElevationRead =
  | {
      readonly ok: true;
      readonly grid: HeightGrid;
      readonly lowestM: number;
      readonly highestM: number;
      /** The unit that its heights were read in, and how that is known. */
      readonly unit: HeightUnitFound;
      readonly notes: readonly Message[];
    }
  | {
      readonly ok: false;
      readonly message: Message;
      /** It can be read once its coordinate system is known: what the file says of it. */
      readonly askSystem: GeoTiffSystem | null;
    };
