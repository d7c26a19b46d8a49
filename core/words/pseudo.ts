import { english } from './en.ts';
import type { Catalogue, Language } from './message.ts';
import type { Figures } from './types.ts';

/** Letters and what stands for them; the rest stays. */
const accents: ReadonlyMap<string, string> = new Map(
  'AÁ EÉ IÍ OÓ UÚ CÇ DĎ GĞ HĤ JĴ KĶ LĽ NŃ RŔ SŠ TŤ WŴ YÝ ZŽ aá eé ií oó uú cç dď gğ hĥ jĵ kķ lľ nń rŕ sš tť wŵ yý zž'
    .split(' ')
    .map((pair) => [pair.charAt(0), pair.charAt(1)]),
);

/**
 * A language made of English, for tests: every text stands in brackets, its letters accented, so that what does not come
 * from the catalogue is seen at once.
 */
export function pseudo(): Language {
  made ??= { tag: 'en-XA', locale: english.locale, words: marked(english.words) as Catalogue };
  return made;
}

let made: Language | undefined;

function marked(words: unknown): unknown {
  if (typeof words === 'string') return inBrackets(words);
  if (typeof words === 'function') {
    const leaf = words as (values: unknown, f: Figures) => string;
    return (values: unknown, f: Figures) => inBrackets(leaf(values, f));
  }
  return Object.fromEntries(Object.entries(words as object).map(([name, part]) => [name, marked(part)]));
}

function inBrackets(text: string): string {
  return `⟦${text.replaceAll(/[A-Za-z]/g, (letter) => accents.get(letter) ?? letter)}⟧`;
}
