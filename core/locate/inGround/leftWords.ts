import type { Fate, InGround } from '../../model/inGroundThings.ts';

/** "Old crossing under G1" */
export function leftHeading({ name }: Pick<InGround, 'name'>): string {
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}`;
}

/** What has become of it, in a word or two, for lists and tags. */
export const fateInShort: Readonly<Record<Fate, string>> = {
  inUse: 'may be live',
  dead: 'dead, left in the ground',
  takenOut: 'taken out',
};

/** What that means for somebody who stands there; `since` as it is to be read. */
export function fateInWords({ fate, since }: Pick<InGround, 'fate'> & { readonly since: string | null }): string {
  const drawn = since === null ? 'No longer in the drawing' : `No longer in the drawing since ${since}`;
  switch (fate) {
    case 'inUse':
      return `${drawn}, and nobody has said that it is cut off: take it for live.`;
    case 'dead':
      return `${drawn}. It was left in the ground, cut off at both ends as recorded; prove it dead all the same.`;
    case 'takenOut':
      return `${drawn}. It was taken out of the ground, as recorded.`;
  }
}
