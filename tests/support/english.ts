import { english } from '../../core/words/en.ts';
import { figures } from '../../core/words/figures.ts';
import { type Message, say } from '../../core/words/message.ts';
import type { Units } from '../../core/words/numbers/write.ts';

/** A message as an English sentence; nothing where there is none. */
export function inEnglish(message: Message | null | undefined, units: Units = 'metric'): string {
  return message ? say(message, figures(units, english)) : '';
}

/** A value with every message in it, however deep, as its English text. */
export function allInEnglish<T>(value: T): T {
  if (Array.isArray(value)) return value.map(allInEnglish) as T;
  if (typeof value !== 'object' || value === null) return value;
  const { code, values } = value as Partial<Message>;
  if (typeof code === 'string' && typeof values === 'object') return inEnglish(value as unknown as Message) as T;
  return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, allInEnglish(part)])) as T;
}
