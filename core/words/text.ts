import { fixed } from './numbers/write.ts';

/** The words as a sentence begins. */
export function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

const natural = new Intl.Collator('en', { numeric: true });

/** How two names stand to each other as people count them: S2 before S10. */
export function compareNames(a: string, b: string): number {
  return natural.compare(a, b);
}

/** Things as people count their names: S2 before S10. */
export function byName(a: { readonly name: string }, b: { readonly name: string }): number {
  return natural.compare(a.name, b.name);
}

/** Names as people count them: G2 before G10. */
export function inOrder(names: readonly string[]): string[] {
  return [...names].sort(natural.compare);
}

/** A word for one and for several: `{ one: 'switch', other: 'switches' }`. */
export interface Forms {
  readonly one: string;
  readonly other: string;
}

const rules = new Intl.PluralRules('en');

/** The form that goes with so many: "switch" for 1, "switches" for 0, 2 and 1.5. */
export function plural(count: number, { one, other }: Forms): string {
  return rules.select(count) === 'one' ? one : other;
}

/** "1 switch", "12 switches", "1,204 runs". `many` is needed only where it is not the word for one with an s. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${fixed(count, 0)} ${plural(count, { one, other: many })}`;
}

const ways = new Intl.ListFormat('en-GB', { type: 'conjunction' });

/** "F1", "F1 and F2", "F1, F2 and F3"; of more than `most`: "F1, F2 and 14 more". */
export function listed(names: readonly string[], most = Number.POSITIVE_INFINITY): string {
  if (names.length <= most) return ways.format(names);
  return ways.format([...names.slice(0, most - 1), `${fixed(names.length - most + 1, 0)} more`]);
}
