/** How the order is to be printed. */
export interface OrderOptions {
  /** Whose habits money is written by, BCP 47: "en-NZ". */
  readonly locale: string;
  readonly withCutLists: boolean;
  readonly withQuantities: boolean;
  /** The date to print, ISO 8601. */
  readonly date: string;
}
