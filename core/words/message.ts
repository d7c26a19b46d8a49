import type { en } from './en.ts';
import type { Figures, Phrase } from './types.ts';

/** All texts of a language, English being the measure: another language's file has the same leaves, with the same values. */
export type Catalogue = typeof en;

/** A language: its texts, and the rules of its plurals and lists (a BCP 47 tag). */
export interface Language {
  /** What it is called in settings and in pages, BCP 47. */
  readonly tag: string;
  readonly locale: string;
  readonly words: Catalogue;
}

/** A catalogue as those see it who write at once: its texts want their values only. */
export type Texts = Bound<Catalogue>;

type Bound<T> = T extends string
  ? string
  : T extends (values: infer V, ...figures: never[]) => string
    ? (values: V) => string
    : { readonly [K in keyof T]: Bound<T[K]> };

/** The texts of a catalogue, which write their values with `f`. */
export function textsWith(words: Catalogue, f: Figures): Texts {
  return bound(words, f) as Texts;
}

function bound(words: unknown, f: Figures): unknown {
  if (typeof words === 'string') return words;
  if (typeof words === 'function') {
    const leaf = words as (values: unknown, f: Figures) => string;
    return (values: unknown) => leaf(values, f);
  }
  return Object.fromEntries(Object.entries(words as object).map(([name, part]) => [name, bound(part, f)]));
}

type Leaf = string | ((...values: never[]) => void);

/** Paths to the leaves of a catalogue: `checks.gatewaysOverlap.message`. */
type PathsOf<T> = { [K in keyof T & string]: T[K] extends Leaf ? K : `${K}.${PathsOf<T[K]>}` }[keyof T & string];

type LeafAt<T, Path extends string> = Path extends `${infer Head}.${infer Rest}`
  ? Head extends keyof T
    ? LeafAt<T[Head], Rest>
    : never
  : Path extends keyof T
    ? T[Path]
    : never;

/** Which text. */
export type Code = PathsOf<Catalogue>;

/** What a text needs to know; null where it needs nothing. */
export type ValuesOf<C extends Code> =
  LeafAt<Catalogue, C> extends (values: infer V, ...figures: never[]) => void ? V : null;

/** Something to say, in no language yet: plain data that passes through JSON and between threads. */
export type Message = Phrase & { readonly code: Code };

/** A message by its code and its values. */
export function message<C extends Code>(
  code: C,
  ...[values]: ValuesOf<C> extends null ? [] : [values: ValuesOf<C>]
): Message {
  return { code, values: (values ?? {}) as Phrase['values'] };
}

/** A message as text, in the units and the language of `f`. */
export function say(phrase: Message, f: Figures): string {
  return f.say(phrase);
}

/** The text of a catalogue for a phrase; for a code that it does not have, the code itself. */
export function textOf({ code, values }: Phrase, words: Catalogue, f: Figures): string {
  let leaf: unknown = words;
  for (const name of code.split('.')) leaf = (leaf as Readonly<Record<string, unknown>> | undefined)?.[name];
  if (typeof leaf === 'function') return (leaf as (values: Phrase['values'], f: Figures) => string)(values, f);
  return typeof leaf === 'string' ? leaf : code;
}
