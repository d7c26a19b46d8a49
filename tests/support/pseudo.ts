import { figures } from '../../core/words/figures.ts';
import type { Message } from '../../core/words/message.ts';
import { pseudo } from '../../core/words/pseudo.ts';
import type { Value } from '../../core/words/types.ts';

/** A message in the pseudo-language. */
export function inPseudo(message: Message): string {
  return figures('metric', pseudo()).say(message);
}

/** What English a text in the pseudo-language still holds, the property's own names left out. */
export function englishIn(text: string, names: Iterable<string> = []): string {
  let rest = '';
  let depth = 0;
  for (const letter of text) {
    if (letter === '⟦') depth++;
    else if (letter === '⟧') depth--;
    else if (depth === 0) rest += letter;
  }
  for (const name of [...names].sort((a, b) => b.length - a.length)) if (name !== '') rest = rest.replaceAll(name, ' ');
  return (rest.match(/[A-Za-z]{2,}/g) ?? []).join(' ');
}

/**
 * Values of a message that are sentences or parts of one, where only names of the property, figures, codes and other
 * messages belong: text with a space in it that no thing of the property holds.
 */
export function proseIn(message: Message, names: ReadonlySet<string>): string[] {
  const said = [...names].map((name) => name.toLowerCase());
  const isName = (text: string) => names.has(text) || said.some((name) => name.includes(text.toLowerCase()));
  return [...textsIn(message.values)].filter((text) => /\S\s+\S/.test(text) && !isName(text));
}

/** Every text anywhere in the things of a property. */
export function namesIn(value: unknown): Set<string> {
  return new Set(textsIn(value));
}

function* textsIn(value: unknown): Generator<string> {
  if (typeof value === 'string') yield value;
  else if (value instanceof Map) for (const part of value.values()) yield* textsIn(part);
  else if (typeof value === 'object' && value !== null) for (const part of Object.values(value)) yield* textsIn(part);
}

/** Fails where a message does not come from the catalogue whole, or would not survive JSON. */
export function expectFromCatalogue(message: Message, names: ReadonlySet<string>): void {
  const left = englishIn(inPseudo(message), names);
  const prose = proseIn(message, names);
  if (left !== '' || prose.length > 0 || !survivesJson(message)) {
    throw new Error(
      `${message.code} holds what is not in the catalogue: ${[left, ...prose].join('; ')} (${JSON.stringify(message.values)})`,
    );
  }
}

/** The values of a message hold nothing that JSON would lose. */
export function survivesJson(message: Message): boolean {
  return JSON.stringify(JSON.parse(JSON.stringify(message))) === JSON.stringify(message) && isPlain(message.values);
}

function isPlain(value: Value): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value === 'function' || typeof value === 'symbol' || value instanceof Map) return false;
  return typeof value !== 'object' || value === null || Object.values(value).every((part) => isPlain(part as Value));
}
