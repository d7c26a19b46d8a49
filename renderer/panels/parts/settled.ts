export type ReadDraft<T> = (text: string) => { readonly value: T } | { readonly problem: string };

/**
 * What becomes of a text when its field is left; null where it says what was shown. What was shown is rounded, so it is
 * never read back over the value it stands for.
 */
export function settled<T>(text: string, shown: string, read: ReadDraft<T>): ReturnType<ReadDraft<T>> | null {
  if (text === shown) return null;
  const [result, before] = [read(text), read(shown)];
  return 'value' in result && 'value' in before && Object.is(result.value, before.value) ? null : result;
}
