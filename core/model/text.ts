/** The words as a sentence begins. */
export function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

const natural = new Intl.Collator('en', { numeric: true });

/** Names as people count them: S2 before S10. */
export function byName(a: { readonly name: string }, b: { readonly name: string }): number {
  return natural.compare(a.name, b.name);
}
