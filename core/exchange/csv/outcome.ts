/** What a text was read as, or why it can't be read and what to do. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string; readonly remedy: string };

export function refuse(
  message: string,
  remedy: string,
): { readonly ok: false; readonly message: string; readonly remedy: string } {
  return { ok: false, message, remedy };
}
