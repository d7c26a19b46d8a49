import type { Message } from '../../words/message.ts';
import type { ReadResult } from './types.ts';

/** A whole file that can't be read: why, and what to do. */
export function refuse(message: Message, remedy: Message): Extract<ReadResult, { ok: false }> {
  return { ok: false, message, remedy };
}
