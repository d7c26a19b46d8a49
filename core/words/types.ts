import type { kinds } from './en/things.ts';
import type { Texts } from './message.ts';
import type { Units } from './numbers/write.ts';

/** What may stand in a message beside its code: figures in SI, names, ids, codes, things, other messages, lists of these. */
export type Value =
  | string
  | number
  | boolean
  | null
  | undefined
  | readonly Value[]
  | { readonly [name: string]: Value };

/** A message as a text sees it: which text, and what goes into it. Plain data, for JSON and between threads. */
export type Phrase = { readonly code: string; readonly values: { readonly [name: string]: Value } };

/** A thing as a sentence calls it; without a name it is "this gateway". */
export type ThingRef = { readonly kind: keyof typeof kinds; readonly name: string };

/** The forms of a word by number, as the language's rules ask for them (Unicode's plural categories). */
export type PluralForms = Partial<Record<Intl.LDMLPluralRule, string>> & { readonly other: string };

/** What a text writes its values with: the units of the property, the numbers and lists of the language. */
export interface Figures {
  readonly units: Units;
  /** All texts, to be said with these: `f.words.draw.lines({ count })`. */
  readonly words: Texts;
  /** 4.20 m, 318 m, 3.84 km. */
  readonly length: (lengthM: number) => string;
  /** For work with a tape, to the centimetre or the hundredth of a foot. */
  readonly tape: (lengthM: number) => string;
  readonly area: (areaM2: number) => string;
  readonly volts: (volts: number) => string;
  readonly bearing: (bearingDeg: number) => string;
  /** With so many decimals; without a number of them, with those that it has. */
  readonly number: (value: number, decimals?: number) => string;
  /** A day, from `2026-03-09`: 9 March 2026. */
  readonly date: (day: string) => string;
  /** "A, B and C"; of more than `most` the first and how many more. */
  readonly list: (names: readonly string[], most?: number) => string;
  /** The form of a word that goes with a number, without the number. */
  readonly plural: (count: number, forms: PluralForms) => string;
  /** What things of a kind are called: "gateway". */
  readonly kind: (kind: ThingRef['kind']) => string;
  /** "gateway G4". */
  readonly thing: (thing: ThingRef) => string;
  /** The same at the head of a sentence: "Gateway G4". */
  readonly headed: (thing: ThingRef) => string;
  /** A message inside of another. */
  readonly say: (phrase: Phrase) => string;
}
