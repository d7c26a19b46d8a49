/** How the order is to be printed. */
export interface OrderOptions {
  /** By whose habits figures and dates are written, BCP 47: "en-NZ". */
  readonly locale?: string | undefined;
  readonly withCutLists: boolean;
  readonly withQuantities: boolean;
  /** The date to print, ISO 8601. */
  readonly date: string;
}
