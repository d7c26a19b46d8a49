import { english } from '../../core/words/en.ts';
import { figures } from '../../core/words/figures.ts';
import { type Message, say } from '../../core/words/message.ts';
import type { Units } from '../../core/words/numbers/write.ts';

/** A message as an English sentence; nothing where there is none. */
export function inEnglish(message: Message | null | undefined, units: Units = 'metric'): string {
  return message ? say(message, figures(units, english)) : '';
}
