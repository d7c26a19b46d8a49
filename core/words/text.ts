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
