import type { FindOptions } from './findOptions.ts';
import type { OrderOptions } from './orderOptions.ts';
import type { PackOptions } from './packOptions.ts';
import type { SheetOptions } from './sheetOptions.ts';

/** What to print, computed from the file as it stands. */
export type PrintJob =
  /** The map sheets with their registers. */
  | { readonly what: 'sheets'; readonly options: SheetOptions }
  /** The order with its cut lists and quantities. */
  | { readonly what: 'order'; readonly options: OrderOptions }
  /** A sheet to find a crossing by, or of what lies near a dig. */
  | { readonly what: 'find'; readonly options: FindOptions }
  /** The handover pack. */
  | { readonly what: 'pack'; readonly options: PackOptions };
