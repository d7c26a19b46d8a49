import type { Message } from '../../words/message.ts';

/** What a text was read as, or why it can't be read and what to do. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: Message; readonly remedy: Message };

export function refuse(
  message: Message,
  remedy: Message,
): { readonly ok: false; readonly message: Message; readonly remedy: Message } {
  return { ok: false, message, remedy };
}
