/** What people are told of the fields of each kind: the catalogue's words by kind and field. */

import type { FieldWords } from '../words/en/kinds/field.ts';
import type { kinds as words } from '../words/en/kinds.ts';
import type { Code, Message, Texts } from '../words/message.ts';
import type { Described, Kind } from './allKinds.ts';
import type { ValueOf } from './describe.ts';

/** The words of a field, in the language of the reader. */
export type WordsOfField = Omit<FieldWords, 'hint' | 'fields'> & {
  readonly hint?: string | ((values: null) => string);
};

/** The words of a kind's field. */
export function wordsOf(kind: Kind, field: string, words: Texts): WordsOfField {
  return (words.kinds[kind] as unknown as Readonly<Record<string, WordsOfField>>)[field]!;
}

/** What a field is called inside of a sentence. `at`: its kind, or its kind and the fields that it lies in. */
export function fieldCalled(at: string, field: string): Message {
  return { code: `kinds.${at}.${field}.called` as Code, values: {} };
}

/** What one of a field's choices is called. */
export function choiceCalled(kind: Kind, field: string, choice: string | number): Message {
  return { code: `kinds.${kind}.${field}.choices.${choice}` as Code, values: {} };
}

type IsUnion<T, All = T> = T extends unknown ? ([All] extends [T] ? false : true) : never;

/** Words that are one of several; a text or a figure that may be any is none. */
type ChoiceOf<T> = T extends string
  ? string extends T
    ? never
    : T
  : T extends number
    ? number extends T
      ? never
      : T
    : never;

/** The choices of a field want a word each; kinds have theirs already. */
type ChoicesFor<T> = [ChoiceOf<T>] extends [never]
  ? unknown
  : [T] extends [Kind]
    ? unknown
    : { readonly choices: { readonly [C in ChoiceOf<T>]: string } };

/** A group of fields, neither places nor one of several groups nor a thing. */
type GroupIn<T> = T extends readonly unknown[] ? never : T extends object ? T : never;

type FieldsFor<T> = [T] extends [GroupIn<T>]
  ? IsUnion<T> extends false
    ? { readonly fields: WordsForFields<T> }
    : unknown
  : unknown;

type WordsFor<T> = FieldWords & ChoicesFor<T> & FieldsFor<T>;

type WordsForFields<V> = { readonly [F in keyof V]-?: WordsFor<NonNullable<V[F]>> };

type ValuesIn<D> = D extends { readonly fields: infer F } ? { [N in keyof F]: ValueOf<F[N]> } : never;

type WordsForKinds = {
  readonly [K in Kind]: WordsForFields<ValuesIn<Extract<Described, { readonly kind: K }>>>;
};

/** Fields that the words speak of and no kind has. */
type Unknown = {
  [K in Kind]: Exclude<keyof (typeof words)[K], keyof WordsForKinds[K]> extends infer F extends string
    ? `${K}.${F}`
    : never;
}[Kind];

type Holds<Needed, _Given extends Needed> = true;
type Nothing<_Left extends never> = true;

/** Fails to compile where a field or a choice has no words, or where words are left of a field that is no more. */
export type EveryFieldHasWords = Holds<WordsForKinds, typeof words>;
export type NoWordsAreLeft = Nothing<Unknown>;
