import type { Xy } from '../../core/geometry/types.ts';
import type { LonLat } from '../../core/model/things.ts';

/** What Find lays over the map. */
export interface FindOverlay {
  /** Where somebody will dig. */
  readonly dig: DigMark | null;
  /** Where the crossing that is looked for may lie. */
  readonly sought: MayLie | null;
  /** A search for a fault. */
  readonly search: FaultSearchMark | null;
}

/** Every way that a thing may lie; false: it is only planned, and lies nowhere. */
export interface MayLie {
  readonly ways: readonly { readonly path: readonly Xy[]; readonly withinM: number }[];
  readonly inGround: boolean;
}

export interface DrawnDig {
  readonly shape: 'point' | 'line' | 'area';
  readonly path: readonly LonLat[];
}

export interface DigMark extends DrawnDig {
  readonly errorM: number;
  readonly hits: readonly DigHit[];
}

/** Something that lies near a dig, numbered as in the inspector. */
export interface DigHit extends MayLie {
  readonly number: string;
  readonly nearest: Xy;
  /** It may lie in the dig. */
  readonly overlap: boolean;
}

export interface FaultSearchMark {
  /** Network edges where the fault can still be; the other live ones step back. */
  readonly inQuestion: readonly number[];
  readonly outOfQuestion: readonly number[];
  /** Where to go next, and what for. */
  readonly next: { readonly xy: Xy; readonly text: string } | null;
  /** Places worth looking at first. */
  readonly suspects: readonly { readonly xy: Xy; readonly number: string }[];
}
