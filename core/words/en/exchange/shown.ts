/** What stands in a file where something else should: nothing, an object, a list, or a value as it is written there. */
export type Shown = { readonly is: 'nothing' | 'object' | 'list' } | { readonly is: 'value'; readonly text: string };

const words = { nothing: 'nothing', object: 'an object', list: 'a list' };

export function shown(value: Shown): string {
  return value.is === 'value' ? `"${value.text}"` : words[value.is];
}
